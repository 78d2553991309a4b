//! How good a layout is, by the objective that stands at the top of the module.

use super::cut::Stretch;
use super::ground::{CLEAR, Ground, Need, REACH};
use super::measure::Measured;
use super::seam::Seam;
use super::sheet::Piece;
use super::way::{self, is_near, narrow};
use crate::geometry::point::Point;

/// The less the better, from the first on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Score {
    /// By how much panels are over the limit, in tenths of a millimetre.
    pub long: i64,
    /// Places the takeoff names that are not met.
    pub hard: i64,
    /// Where it would crack, in thousandths of a panel's shape.
    pub cracks: i64,
    /// Joint, and what it is worth to avoid, in millimetres.
    pub cost: i64,
    /// How uneven panels are.
    pub uneven: i64,
}

impl std::ops::AddAssign for Score {
    fn add_assign(&mut self, other: Self) {
        self.long += other.long;
        self.hard += other.hard;
        self.cracks += other.cracks;
        self.cost += other.cost;
        self.uneven += other.uneven;
    }
}

/// What may be added until it is no better: the order stays the same whatever is added to both.
impl std::ops::Sub for Score {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self {
            long: self.long - other.long,
            hard: self.hard - other.hard,
            cracks: self.cracks - other.cracks,
            cost: self.cost - other.cost,
            uneven: self.uneven - other.uneven,
        }
    }
}

impl Score {
    /// Of so many panels that are alike.
    pub fn times(self, many: i64) -> Self {
        Self {
            long: self.long * many,
            hard: self.hard * many,
            cracks: self.cracks * many,
            cost: self.cost * many,
            uneven: self.uneven * many,
        }
    }

    /// Whether it breaks nothing but the wish for less joint.
    pub fn is_sound(&self) -> bool {
        self.long == 0 && self.hard == 0 && self.cracks == 0
    }

    pub const WORST: Self = Self {
        long: i64::MAX,
        hard: i64::MAX,
        cracks: i64::MAX,
        cost: i64::MAX,
        uneven: i64::MAX,
    };
}

/// Thousandths of a ratio: 1.5, which no panel passes.
const STRETCHED: i64 = 1_500;
/// An inside corner without a joint is as bad as a panel 2.1 long.
pub(super) const CORNER: i64 = 600;
pub(super) const PASSED: i64 = 400;
/// A strip breaks across; nine of them still beat two corners that nothing runs to.
pub(super) const SLIVER: i64 = 270;
const MILLIMETRE: i64 = 1_000_000;

/// What is only ugly, in spacings of joint that one would cut to avoid it.
const SHARP: i64 = 2;
/// In halves of a spacing.
const ENDS: i64 = 3;
const ASKEW: i64 = 2;
const BESIDE: i64 = 1;

/// The ways of a panel as the score needs them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Sides {
    pub size: [i64; 2],
    pub mean: [i64; 2],
    pub cut_wide: Option<i64>,
    pub is_strip: bool,
    pub sharp: i64,
    pub doubled: i128,
}

impl Ground<'_> {
    pub fn of_sides(&self, sides: &Sides) -> Score {
        let [long, short] = sides.mean;
        let over = sides.size[0] - self.longest;
        let mut score = Score::default();
        if 20_000 < over {
            score.long = over / 100_000 + 1;
        }
        if !self.is_narrow(sides) {
            let ratio = ratio(long, short);
            score.cracks = (ratio - STRETCHED - 1).max(0);
            score.cost = 2 * (long - short) + (2 * long - 5 * (short / 2)).max(0);
        }
        if self.thin(sides.cut_wide).is_some() {
            score.cracks += SLIVER;
        }
        score.cost = (score.cost + SHARP * sides.sharp * self.spacing) / MILLIMETRE;
        let area = narrow(sides.doubled / 1_000_000_000_000_000);
        score.uneven = area * area / 1000;
        score
    }

    pub fn of_panel(&self, measured: &Measured) -> Score {
        self.of_sides(&Sides {
            size: measured.size,
            mean: measured.mean,
            cut_wide: measured.cut_wide,
            is_strip: measured.is_strip,
            sharp: i64::try_from(measured.sharp.len()).unwrap_or(i64::MAX),
            doubled: measured.doubled,
        })
    }

    pub fn measured(&self, piece: &Piece) -> Measured {
        Measured::of(piece, &|thing| self.is_small(thing))
    }

    /// How wide between joints, where that is under a third of the spacing.
    pub fn thin(&self, cut_wide: Option<i64>) -> Option<i64> {
        cut_wide.filter(|wide| 3 * wide + REACH < self.spacing)
    }

    /// A curb or a mow strip is jointed by the limit alone.
    fn is_narrow(&self, sides: &Sides) -> bool {
        sides.is_strip && sides.mean[1] < self.narrow
    }

    /// Of whole lines, and of panels apart from them.
    pub fn of_lines(&self, lines: &[Stretch]) -> Score {
        let mut score = Score::default();
        let mut cost: i64 = lines.iter().map(|line| line.seam.length()).sum();
        score.cracks += self.passed(lines);
        score.cracks += CORNER * self.unrelieved(lines);
        for meet in self.asked.meet {
            if !ends(lines).any(|(end, _)| is_near(end, meet.at, REACH)) {
                if meet.must {
                    score.hard += 1;
                } else {
                    cost += self.loose_end();
                }
            }
        }
        let loose = i64::try_from(self.loose_ends(lines)).unwrap_or(0);
        cost += self.loose_end() * loose;
        cost += lines.iter().map(|line| self.ugly(&line.seam)).sum::<i64>();
        score.cost = cost / MILLIMETRE;
        score
    }

    pub fn of_layout(&self, pieces: &[Piece], lines: &[Stretch]) -> Score {
        let mut score = self.of_lines(lines);
        for piece in pieces {
            score += self.of_panel(&self.measured(piece));
        }
        score
    }

    /// What joints are charged at the least that leave places out, however they are cut.
    pub fn left_out(&self, seams: &[Seam]) -> i64 {
        let lines = seams.iter().map(|seam| Stretch {
            seam: *seam,
            on_joint: [false; 2],
        });
        CORNER * self.unrelieved(&lines.collect::<Vec<_>>())
    }

    /// What one line is sure to be charged, whatever else is cut.
    pub fn least(&self, seam: &Seam) -> Score {
        let line = Stretch {
            seam: *seam,
            on_joint: [false; 2],
        };
        Score {
            cracks: self.passed(&[line]),
            cost: (seam.length() + self.ugly(seam)) / MILLIMETRE,
            ..Score::default()
        }
    }

    /// Joint that one would cut lest another ends where nothing goes on, here or in a neighbour.
    pub fn loose_end(&self) -> i64 {
        ENDS * self.spacing / 2
    }

    /// What is only ugly in one line.
    fn ugly(&self, seam: &Seam) -> i64 {
        let mut ugly = if self.is_askew(seam) { ASKEW } else { 0 };
        for end in [seam.from, seam.to] {
            let is_at = |turn: &Point| is_near(*turn, end, REACH);
            let is_by = |turn: &Point| is_near(*turn, end, CLEAR - REACH);
            let is_beside = || self.turns.iter().any(is_by) || self.is_at_large(end);
            if !self.turns.iter().any(is_at) && is_beside() {
                ugly += BESIDE;
            }
        }
        ugly * self.spacing
    }

    /// Whether a joint ends at the side of an opening with corners that joints run to.
    fn is_at_large(&self, end: Point) -> bool {
        let large = |number: &usize| {
            let thing = &self.things[*number];
            !thing.is_small && !thing.is_round
        };
        (0..self.things.len())
            .filter(large)
            .any(|number| self.is_on(number, end))
    }

    pub fn ends_on(&self, thing: usize, seam: &Seam) -> bool {
        self.is_on(thing, seam.from) || self.is_on(thing, seam.to)
    }

    /// How many lines end on others where nothing goes on.
    pub fn loose_ends(&self, lines: &[Stretch]) -> usize {
        self.ends_in_panels(lines).count()
    }

    /// How many places have no joint that needs one.
    pub fn unrelieved(&self, lines: &[Stretch]) -> i64 {
        let corners = self
            .needs
            .iter()
            .filter(|need| !is_relieved(need, lines))
            .count();
        let round: i64 = (0..self.things.len())
            .map(|thing| self.short_of_ends(thing, lines))
            .sum();
        i64::try_from(corners).unwrap_or(i64::MAX) + round
    }

    /// What lines are charged that pass too near.
    pub fn passed(&self, lines: &[Stretch]) -> i64 {
        let mut many = 0;
        for line in lines {
            many += self
                .needs
                .iter()
                .filter(|need| self.passes(need, line).is_some())
                .count();
            many += (0..self.things.len())
                .filter(|thing| self.passes_round(*thing, line).is_some())
                .count();
        }
        PASSED * i64::try_from(many).unwrap_or(0)
    }

    /// How many joints a round thing lacks of two.
    pub fn short_of_ends(&self, number: usize, lines: &[Stretch]) -> i64 {
        let thing = &self.things[number];
        if !thing.is_round || thing.is_free {
            return 0;
        }
        let many = ends(lines)
            .filter(|(end, _)| self.is_on(number, *end))
            .take(2)
            .count();
        2 - i64::try_from(many).unwrap_or(2)
    }

    fn is_on(&self, number: usize, place: Point) -> bool {
        let thing = &self.things[number];
        thing.low.x - REACH <= place.x
            && place.x <= thing.high.x + REACH
            && thing.low.y - REACH <= place.y
            && place.y <= thing.high.y + REACH
            && super::seam::edges(&thing.ring).any(|(edge, to)| edge.seam(to).is_near(place, REACH))
    }

    /// How near a line passes a corner that it does not run to.
    pub fn passes(&self, need: &Need, line: &Stretch) -> Option<i64> {
        let seam = &line.seam;
        let off = seam.near(need.at, CLEAR - REACH)?;
        if off <= REACH {
            return None;
        }
        let [from, to] = [seam.from, seam.to];
        // To another corner of the same thing, or to a short side of it.
        let runs_to_it = match need.thing {
            None => false,
            Some(_) => self
                .needs
                .iter()
                .filter(|other| other.thing == need.thing)
                .any(|other| {
                    is_near(other.at, from, REACH)
                        || is_near(other.at, to, REACH)
                        || is_beside(other, from)
                        || is_beside(other, to)
                }),
        };
        (!runs_to_it).then_some(off)
    }

    pub fn passes_round(&self, number: usize, line: &Stretch) -> Option<i64> {
        let thing = &self.things[number];
        if !thing.is_round || self.is_on(number, line.seam.from) || self.is_on(number, line.seam.to)
        {
            return None;
        }
        let middle = thing.middle();
        let half = (thing.high.x - thing.low.x).max(thing.high.y - thing.low.y) / 2;
        let off = line.seam.near(middle, half + CLEAR - REACH)? - half;
        Some(off.max(0))
    }

    /// Ends of lines on other lines, where nothing goes on.
    pub fn ends_in_panels<'s>(&self, lines: &'s [Stretch]) -> impl Iterator<Item = Point> + 's {
        let _ = self;
        lines.iter().enumerate().flat_map(move |(number, line)| {
            let both = [
                (line.seam.from, line.on_joint[0]),
                (line.seam.to, line.on_joint[1]),
            ];
            both.into_iter()
                .filter(|end| end.1)
                .filter_map(move |(end, _)| {
                    let heading = line.seam.heading(end)?;
                    let out = if end == line.seam.to {
                        heading
                    } else {
                        heading.back()
                    };
                    let goes_on = lines
                        .iter()
                        .enumerate()
                        .filter(|(other, _)| *other != number)
                        .any(|(_, other)| {
                            [other.seam.from, other.seam.to].into_iter().any(|start| {
                                is_near(start, end, 2 * REACH)
                                    && other.seam.heading(start).is_some_and(|heading| {
                                        let away = if start == other.seam.from {
                                            heading
                                        } else {
                                            heading.back()
                                        };
                                        way::ONE / 10 * 9 < away.cosine(out)
                                    })
                            })
                        });
                    (!goes_on).then_some(end)
                })
        })
    }
}

/// Thousandths.
pub(super) fn ratio(long: i64, short: i64) -> i64 {
    narrow(i128::from(long) * 1000 / i128::from(short.max(1)))
}

pub(super) fn is_relieved(need: &Need, lines: &[Stretch]) -> bool {
    lines.iter().any(|line| relieves(need, &line.seam))
}

pub(super) fn relieves(need: &Need, seam: &Seam) -> bool {
    seam.is_near(need.at, REACH) || is_beside(need, seam.from) || is_beside(need, seam.to)
}

fn is_beside(need: &Need, end: Point) -> bool {
    let short = |side: &Seam| side.is_near(end, REACH);
    need.beside.iter().any(short)
}

pub(super) fn ends(lines: &[Stretch]) -> impl Iterator<Item = (Point, bool)> + '_ {
    lines.iter().flat_map(|line| {
        [
            (line.seam.from, line.on_joint[0]),
            (line.seam.to, line.on_joint[1]),
        ]
    })
}
