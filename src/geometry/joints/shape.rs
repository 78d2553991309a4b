//! A panel of any shape divided: every way of cutting is cut and judged.

use super::cut::Stretch;
use super::cuts;
use super::fan;
use super::ground::{CLEAR, Ground, REACH, Thing};
use super::marks::{self, Kind, Mark};
use super::measure::{extent, frames, turns};
use super::plan::{self, Parts};
use super::score::Score;
use super::seam::Seam;
use super::sheet::Piece;
use super::way::{Way, is_near};
use crate::geometry::point::Point;

/// More parts than needed that are tried, beside those nearest to square.
const FINER: i64 = 2;

/// One direction of the shape, and how far it reaches along that and aside of it.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    pub way: Way,
    pub low: Point,
    pub high: Point,
}

struct Trial<'a> {
    ground: &'a Ground<'a>,
    piece: &'a Piece,
    marks: &'a [Mark],
    best: Option<(Score, Vec<Piece>, Vec<Stretch>)>,
}

/// Evenly both ways along each of its sides; in strips that are each divided by themselves; and along
/// the best of its sides through corners and marks.
pub(super) fn divided(
    ground: &Ground<'_>,
    piece: &Piece,
    marks: &[Mark],
) -> Option<(Vec<Piece>, Vec<Stretch>)> {
    let mut trial = Trial {
        ground,
        piece,
        marks,
        best: None,
    };
    let mut first: Option<(Score, Frame, [usize; 2])> = None;
    for way in frames(piece) {
        let frame = Frame::of(piece, way);
        let [columns, rows] = trial.evens(frame);
        for (a, column) in columns.iter().enumerate() {
            let (cut, made) = plan::parts(piece, &frame.lines(column, &[]));
            for (b, row) in rows.iter().enumerate() {
                let most = first.as_ref().map_or(Score::WORST, |first| first.0);
                let rows = frame.lines(&[], row);
                let parts = plan::parts_under(ground, &cut, made.clone(), &rows, most);
                let Some(parts) = parts else {
                    continue;
                };
                let score = trial.judged(parts);
                if first.as_ref().is_none_or(|first| score < first.0) {
                    first = Some((score, frame, [a, b]));
                }
            }
        }
    }
    if let Some((least, frame, chosen)) = first {
        let [columns, rows] = trial.evens(frame);
        for column in &columns {
            trial.strips(&frame.lines(column, &[]), frame.way);
        }
        for row in &rows {
            trial.strips(&frame.lines(&[], row), frame.way);
        }
        trial.through(frame, chosen, least);
    }
    trial.fans();
    let (_, pieces, made) = trial.best?;
    (!made.is_empty()).then_some((pieces, made))
}

impl Frame {
    pub fn of(piece: &Piece, way: Way) -> Self {
        let (low, high) = extent(&piece.loops[0], way);
        Self { way, low, high }
    }

    pub fn wide(&self) -> i64 {
        self.high.x - self.low.x
    }

    pub fn tall(&self) -> i64 {
        self.high.y - self.low.y
    }

    pub fn lines(&self, columns: &[i64], rows: &[i64]) -> Vec<Seam> {
        let place = |x: i64, y: i64| self.way.left().from(self.way.from(Point::default(), x), y);
        let (low, high) = (self.low, self.high);
        let column = |cut: &i64| {
            let x = low.x + cut;
            Seam::straight(place(x, low.y - CLEAR), place(x, high.y + CLEAR))
        };
        let row = |cut: &i64| {
            let y = low.y + cut;
            Seam::straight(place(low.x - CLEAR, y), place(high.x + CLEAR, y))
        };
        columns
            .iter()
            .map(column)
            .chain(rows.iter().map(row))
            .collect()
    }
}

impl Trial<'_> {
    /// As few parts as the limit allows, some more, and so many as are nearest to square.
    fn even(&self, long: i64, across: i64) -> Vec<Vec<i64>> {
        let least = (long - 20_000).div_euclid(self.ground.longest) + 1;
        let more = if across.min(long) < self.ground.narrow {
            0
        } else {
            FINER
        };
        let square = (long + across / 2) / across.max(1);
        let counts = (least..=least + more).chain((least + more < square).then_some(square));
        counts.map(|parts| cuts::even(long, parts)).collect()
    }

    fn evens(&self, frame: Frame) -> [Vec<Vec<i64>>; 2] {
        [
            self.even(frame.wide(), frame.tall()),
            self.even(frame.tall(), frame.wide()),
        ]
    }

    /// Lines between sides that draw nearer to each other, and joints square to one of these.
    fn fans(&mut self) {
        for taper in fan::tapers(self.piece, self.ground.longest) {
            let lines = self.even(taper.wide(), self.ground.longest);
            let lines = lines.iter().map(|cuts| taper.lines(cuts.len() + 1));
            for lines in lines.filter(|lines| !lines.is_empty()) {
                let (cut, made) = plan::parts(self.piece, &lines);
                for side in [taper.one, taper.other] {
                    let frame = Frame::of(self.piece, side.way);
                    for rows in self.even(frame.wide(), frame.tall()) {
                        let (made, rows) = (made.clone(), frame.lines(&rows, &[]));
                        let most = self.beat();
                        if let Some(parts) = plan::parts_under(self.ground, &cut, made, &rows, most)
                        {
                            self.judged(parts);
                        }
                    }
                }
            }
        }
    }

    fn beat(&self) -> Score {
        self.best.as_ref().map_or(Score::WORST, |best| best.0)
    }

    fn judged(&mut self, parts: Parts) -> Score {
        let mut score = self.of_lines(&parts.made);
        score += parts.score;
        if self.best.as_ref().is_none_or(|best| score < best.0) {
            self.best = Some((score, parts.panels, parts.made));
        }
        score
    }

    /// Strips between these lines, each cut across into as many parts as suit it.
    fn strips(&mut self, lines: &[Seam], way: Way) {
        let most = self.beat();
        let (strips, made) = plan::parts(self.piece, lines);
        let mut least = plan::of_length(&made);
        let is_row = lines
            .first()
            .is_some_and(|line| line.way.sine(way).abs() < line.way.cosine(way).abs());
        let mut all = Parts {
            panels: Vec::new(),
            made,
            score: Score::default(),
        };
        for strip in strips {
            let frame = Frame::of(&strip, way);
            let (long, across) = if is_row {
                (frame.wide(), frame.tall())
            } else {
                (frame.tall(), frame.wide())
            };
            let mut sets = self.even(long, across);
            sets.insert(0, Vec::new());
            sets.dedup();
            let mut best: Option<(Score, Parts)> = None;
            for set in &sets {
                let seams = if is_row {
                    frame.lines(set, &[])
                } else {
                    frame.lines(&[], set)
                };
                let beat = best.as_ref().map_or(most - least, |best| best.0);
                let whole = std::slice::from_ref(&strip);
                let parts = plan::parts_under(self.ground, whole, Vec::new(), &seams, beat);
                let Some(parts) = parts else {
                    continue;
                };
                let long: i64 = parts.made.iter().map(|joint| joint.seam.length()).sum();
                let mut score = parts.score;
                score.cost += long / 1_000_000;
                if score < beat {
                    best = Some((score, parts));
                }
            }
            let Some((score, parts)) = best else {
                return;
            };
            least += score;
            all.score += parts.score;
            all.panels.extend(parts.panels);
            all.made.extend(parts.made);
        }
        self.judged(all);
    }

    /// Through corners and marks, one way after the other.
    fn through(&mut self, frame: Frame, chosen: [usize; 2], mut least: Score) {
        let mut all = turns(self.piece);
        all.extend(self.marks.iter().map(|mark| mark.at));
        let round = self.ground.things.iter().filter(|thing| thing.is_round);
        all.extend(round.map(Thing::middle));
        let places = |of: &dyn Fn(Point) -> i64, long: i64| {
            let far = all.iter().map(|at| of(*at));
            let mut places: Vec<i64> = far
                .filter(|far| REACH < *far && *far < long - REACH)
                .collect();
            places.sort_unstable();
            places.dedup_by(|a, b| *a - *b <= REACH);
            places
        };
        let at = [
            places(&|at| frame.way.along(at) - frame.low.x, frame.wide()),
            places(&|at| frame.way.aside(at) - frame.low.y, frame.tall()),
        ];
        let even = self.evens(frame);
        let mut kept = [even[0][chosen[0]].clone(), even[1][chosen[1]].clone()];
        for turn in 0..2 {
            if at[turn].is_empty() {
                continue;
            }
            let long = [frame.wide(), frame.tall()][turn];
            let parts = i64::try_from(even[turn][chosen[turn]].len()).unwrap_or(0) + 1;
            for set in cuts::candidates(
                long,
                &at[turn],
                self.ground.longest,
                ((parts - 1).max(1), parts),
            ) {
                let mut tried = kept.clone();
                tried[turn] = set;
                let lines = frame.lines(&tried[0], &tried[1]);
                let whole = std::slice::from_ref(self.piece);
                let parts = plan::parts_under(self.ground, whole, Vec::new(), &lines, least);
                let Some(parts) = parts else {
                    continue;
                };
                let score = self.judged(parts);
                if score < least {
                    (least, kept) = (score, tried);
                }
            }
        }
    }

    fn of_lines(&self, made: &[Stretch]) -> Score {
        let (ground, piece, marks) = (self.ground, self.piece, self.marks);
        let mut score = Score::default();
        let lines = plan::merged(made.to_vec());
        let mut cost: i64 = lines.iter().map(|line| line.seam.length()).sum();
        let ends = || {
            lines.iter().flat_map(|line| {
                [
                    (line.seam.from, line.on_joint[0]),
                    (line.seam.to, line.on_joint[1]),
                ]
            })
        };
        for mark in marks {
            let met = ends().any(|(end, _)| is_near(end, mark.at, REACH));
            match mark.kind {
                _ if met => {}
                Kind::Corner => {}
                Kind::End => cost += ground.spacing,
                Kind::Must => score.hard += 1,
                Kind::Wish => cost += ground.loose_end(),
            }
        }
        score.cracks += ground.passed(&lines);
        for end in ground.ends_in_panels(&lines) {
            let is_met = marks.iter().any(|mark| is_near(mark.at, end, REACH));
            // Beyond the rim of this part another joint may yet go on.
            let is_outer = marks::is_on(piece, end);
            cost += match (is_met, is_outer) {
                (true, _) => 0,
                (false, true) => ground.spacing / 2,
                (false, false) => ground.spacing,
            };
        }
        score.cost += cost / 1_000_000;
        score
    }
}
