//! One panel divided both ways, by the lines that the score likes best.

use super::cut::Stretch;
use super::cuts;
use super::ground::{CLEAR, Ground, REACH};
use super::marks::{Kind, Mark};
use super::measure::{Measured, extent};
use super::plan;
use super::score::{Score, Sides};
use super::seam::{Beyond, Seam, edges};
use super::sheet::Piece;
use super::way::{Way, distance};
use crate::geometry::point::Point;

/// More parts than needed that are tried of a long strip.
const FINER: i64 = 24;

/// One way of a rectangle.
struct Side<'a> {
    long: i64,
    across: i64,
    marks: Vec<(i64, Kind)>,
    /// Stretches of the two sides along this way that are joints.
    joints: Vec<(i64, i64)>,
    /// Middles of small things and half their width.
    things: Vec<(i64, i64)>,
    ground: &'a Ground<'a>,
}

/// The parts and the joints between them.
pub(super) fn divided(
    ground: &Ground<'_>,
    piece: &Piece,
    marks: &[Mark],
) -> Option<(Vec<Piece>, Vec<Stretch>)> {
    let measured = ground.measured(piece);
    let score = ground.of_panel(&measured);
    let is_fine = score.long == 0 && score.cracks == 0;
    if is_fine && marks.iter().all(|mark| mark.kind == Kind::Corner) {
        return None;
    }
    let seams = match measured.rectangle {
        Some(corners) => by_sides(ground, piece, &measured, corners, marks),
        None => return super::shape::divided(ground, piece, marks),
    };
    let (pieces, made) = plan::parts(piece, &seams);
    (!made.is_empty()).then_some((pieces, made))
}

/// So many parts at least, and the most that are worth trying.
fn counts(ground: &Ground<'_>, long: i64, across: i64) -> (i64, i64) {
    let least = (long - 20_000).div_euclid(ground.longest) + 1;
    if long.min(across) < ground.narrow {
        return (least, least);
    }
    // No part shorter than two thirds of the other way.
    let most = 3 * long / (2 * across.min(ground.longest)).max(1) + 1;
    (least, most.clamp(least + 1, least + FINER))
}

/// A rectangle: all sizes follow from both ways' cuts, so that no line has to be drawn to judge them.
fn by_sides(
    ground: &Ground<'_>,
    piece: &Piece,
    measured: &Measured,
    corners: [Point; 4],
    marks: &[Mark],
) -> Vec<Seam> {
    let (Some(along), Some(up)) = (
        Way::between(corners[0], corners[1]),
        Way::between(corners[1], corners[2]),
    ) else {
        return Vec::new();
    };
    let (long, tall) = (
        distance(corners[0], corners[1]),
        distance(corners[1], corners[2]),
    );
    let first = Side::of(ground, piece, marks, (corners[0], along), (long, tall));
    let second = Side::of(ground, piece, marks, (corners[0], up), (tall, long));
    let (ones, others) = (first.judged(), second.judged());
    let mut best: Option<(Score, usize, usize)> = None;
    for (a, one) in ones.iter().enumerate() {
        for (b, other) in others.iter().enumerate() {
            let mut score = one.1;
            score += other.1;
            if best.is_some_and(|best| (best.0.long, best.0.hard) < (score.long, score.hard)) {
                continue;
            }
            let bounded = measured.cut_wide.is_some();
            for &(wide, columns) in &one.2 {
                for &(deep, rows) in &other.2 {
                    let is_cut = [
                        bounded || 1 < one.2.len() || 1 < columns,
                        bounded || 1 < other.2.len() || 1 < rows,
                    ];
                    let each = ground.of_sides(&rectangle(
                        wide,
                        deep,
                        is_cut,
                        measured.is_strip,
                        (long, tall),
                    ));
                    score += each.times(columns * rows);
                }
            }
            if best.is_none_or(|best| score < best.0) {
                best = Some((score, a, b));
            }
        }
    }
    let Some((_, a, b)) = best else {
        return Vec::new();
    };
    let over = CLEAR;
    let across = |&far: &i64, along: Way, up: Way, tall: i64| {
        let foot = along.from(corners[0], far);
        Seam::straight(up.from(foot, -over), up.from(foot, tall + over))
    };
    let one = ones[a].0.iter().map(|far| across(far, along, up, tall));
    let other = others[b].0.iter().map(|far| across(far, up, along, long));
    one.chain(other).collect()
}

fn rectangle(wide: i64, deep: i64, is_cut: [bool; 2], is_strip: bool, whole: (i64, i64)) -> Sides {
    let size = [wide.max(deep), wide.min(deep)];
    let cut = [(wide, is_cut[0]), (deep, is_cut[1])];
    let short_is_whole = if wide < deep {
        wide == whole.0
    } else {
        deep == whole.1
    };
    Sides {
        size,
        mean: size,
        cut_wide: cut.iter().filter(|way| way.1).map(|way| way.0).min(),
        is_strip: is_strip && short_is_whole || !is_cut[usize::from(deep <= wide)],
        sharp: 0,
        doubled: 2 * i128::from(wide) * i128::from(deep),
    }
}

type Judged = (Vec<i64>, Score, Vec<(i64, i64)>);

impl<'a> Side<'a> {
    fn of(
        ground: &'a Ground<'a>,
        piece: &Piece,
        marks: &[Mark],
        (origin, way): (Point, Way),
        (long, across): (i64, i64),
    ) -> Self {
        let place = |at: Point| (way.along(at - origin), way.aside(at - origin).abs());
        let is_along = |aside: i64| aside <= REACH || across - REACH <= aside;
        let within = |far: i64| REACH < far && far < long - REACH;
        let marks = marks.iter().filter_map(|mark| {
            let (far, aside) = place(mark.at);
            (is_along(aside) && within(far)).then_some((far, mark.kind))
        });
        let joints = edges(&piece.loops[0]).filter_map(|(edge, to)| {
            let (from, to) = (place(edge.at), place(to));
            let is_side = is_along(from.1) && is_along(to.1) && (from.1 - to.1).abs() <= REACH;
            (is_side && edge.beyond == Beyond::Joint)
                .then_some((from.0.min(to.0), from.0.max(to.0)))
        });
        let (low, high) = piece.bounds();
        let things = ground.things.iter().filter(|thing| {
            thing.low.x <= high.x
                && low.x <= thing.high.x
                && thing.low.y <= high.y
                && low.y <= thing.high.y
        });
        let things = things.map(|thing| {
            let (low, high) = extent(&thing.ring, way);
            let from = way.along(origin);
            let middle = i64::midpoint(low.x, high.x) - from;
            (middle, (high.x - low.x) / 2)
        });
        Self {
            long,
            across,
            marks: marks.collect(),
            joints: joints.collect(),
            things: things.filter(|(middle, _)| within(*middle)).collect(),
            ground,
        }
    }

    /// Every set of cuts worth trying, what it costs by itself, and the parts it leaves.
    fn judged(&self) -> Vec<Judged> {
        let mut places: Vec<i64> = self.marks.iter().map(|mark| mark.0).collect();
        places.sort_unstable();
        places.dedup_by(|a, b| *a - *b <= REACH);
        let counts = counts(self.ground, self.long, self.across);
        let sets = cuts::candidates(self.long, &places, self.ground.longest, counts);
        let judged = sets.into_iter().map(|set| {
            let score = self.judge(&set);
            let parts = cuts::parts(self.long, &set);
            (set, score, parts)
        });
        judged.collect()
    }

    fn judge(&self, set: &[i64]) -> Score {
        let spacing = self.ground.spacing;
        let nearest = |far: i64| {
            set.iter()
                .map(|cut| (cut - far).abs())
                .min()
                .unwrap_or(i64::MAX)
        };
        let mut score = Score::default();
        let mut cost = i64::try_from(set.len()).unwrap_or(0) * self.across;
        for &(far, kind) in &self.marks {
            let off = nearest(far);
            match kind {
                _ if off <= REACH => {}
                Kind::Corner if off < CLEAR - REACH => score.cracks += 400,
                Kind::Corner => {}
                Kind::End => cost += spacing,
                Kind::Must => score.hard += 1,
                Kind::Wish => cost += self.ground.loose_end(),
            }
        }
        for &(middle, half) in &self.things {
            let passed = set.iter().filter(|cut| {
                let off = (*cut - middle).abs();
                half < off && off < half + CLEAR - REACH
            });
            score.cracks += 400 * i64::try_from(passed.count()).unwrap_or(0);
        }
        // A joint that ends on another one may find nothing to go on in.
        for cut in set {
            let on = self
                .joints
                .iter()
                .filter(|joint| joint.0 < cut - REACH && cut + REACH < joint.1);
            let met = self.marks.iter().any(|mark| (mark.0 - cut).abs() <= REACH);
            if !met {
                cost += i64::try_from(on.count()).unwrap_or(0) * spacing / 2;
            }
        }
        score.cost = cost / 1_000_000;
        score
    }
}
