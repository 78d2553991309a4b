//! A layout while it is being made: panels, and the lines between them.

use super::curve::Curve;
use super::cut::Stretch;
use super::ground::Ground;
use super::score::Score;
use super::seam::Seam;
use super::sheet::Piece;
use super::way::{self, distance};

#[derive(Clone, Debug)]
pub(super) struct Plan {
    pub pieces: Vec<Piece>,
    pub lines: Vec<Stretch>,
    pub score: Score,
}

impl Plan {
    /// These joints cut one after another; what they leave uncut is no joint.
    pub fn cut(ground: &Ground<'_>, seams: &[Seam]) -> Self {
        let mut pieces = vec![ground.whole.clone()];
        let mut made = Vec::new();
        for seam in seams {
            cut_all(&mut pieces, seam, &mut made);
        }
        Self::of(ground, pieces, made)
    }

    /// The same, when it is better than `most`.
    pub fn under(ground: &Ground<'_>, seams: &[Seam], most: Score) -> Option<Self> {
        let whole = std::slice::from_ref(&ground.whole);
        let parts = parts_under(ground, whole, Vec::new(), seams, most)?;
        let lines = merged(parts.made);
        let mut score = ground.of_lines(&lines);
        score += parts.score;
        (score < most).then_some(Self {
            pieces: parts.panels,
            lines,
            score,
        })
    }

    pub fn of(ground: &Ground<'_>, pieces: Vec<Piece>, made: Vec<Stretch>) -> Self {
        let lines = merged(made);
        let score = ground.of_layout(&pieces, &lines);
        Self {
            pieces,
            lines,
            score,
        }
    }

    /// Leaves out lines, or the ends of lines beyond a crossing, while that is better.
    pub fn trimmed(self, ground: &Ground<'_>, mut tries: usize) -> Self {
        let mut best = self;
        loop {
            let seams: Vec<Seam> = best.lines.iter().map(|line| line.seam).collect();
            let mut better: Option<Self> = None;
            for other in shorter(&seams) {
                if tries == 0 {
                    return better.unwrap_or(best);
                }
                tries -= 1;
                let beaten = better.as_ref().map_or(best.score, |better| better.score);
                let is_within = beaten.long == 0 && beaten.hard == 0;
                if is_within && beaten.cracks < ground.left_out(&other) {
                    continue;
                }
                better = Self::under(ground, &other, beaten).or(better);
            }
            match better {
                Some(plan) => best = plan,
                None => return best,
            }
        }
    }
}

pub(super) fn cut_all(pieces: &mut Vec<Piece>, seam: &Seam, made: &mut Vec<Stretch>) {
    if !pieces.iter().any(|piece| piece.may_meet(seam)) {
        return;
    }
    let mut left = Vec::with_capacity(pieces.len() + 4);
    for piece in pieces.drain(..) {
        piece.cut(seam, made, &mut left);
    }
    *pieces = left;
}

/// A piece cut by joints one after another.
pub(super) fn parts(piece: &Piece, seams: &[Seam]) -> (Vec<Piece>, Vec<Stretch>) {
    let (mut pieces, mut made) = (vec![piece.clone()], Vec::new());
    for seam in seams {
        cut_all(&mut pieces, seam, &mut made);
    }
    (pieces, made)
}

/// Panels cut one after another, each measured as soon as it is there, so that what is no better than
/// `most` is left while most of it is still whole.
struct Cutting<'a> {
    ground: &'a Ground<'a>,
    seams: &'a [Seam],
    most: Score,
    panels: Vec<Piece>,
    score: Score,
    /// What each joint cuts.
    made: Vec<Vec<Stretch>>,
    long: i64,
}

/// What is cut, and what its panels are charged.
pub(super) struct Parts {
    pub panels: Vec<Piece>,
    pub made: Vec<Stretch>,
    pub score: Score,
}

/// Pieces cut by joints one after another; `None` when these, by their length alone, and the panels are
/// together no better than `most`.
pub(super) fn parts_under(
    ground: &Ground<'_>,
    pieces: &[Piece],
    mut made: Vec<Stretch>,
    seams: &[Seam],
    most: Score,
) -> Option<Parts> {
    let mut cutting = Cutting {
        ground,
        seams,
        most,
        panels: Vec::new(),
        score: Score::default(),
        made: vec![Vec::new(); seams.len()],
        long: made.iter().map(|line| line.seam.length()).sum(),
    };
    for piece in pieces {
        cutting.take(piece.clone(), 0)?;
    }
    made.extend(cutting.made.into_iter().flatten());
    Some(Parts {
        panels: cutting.panels,
        made,
        score: cutting.score,
    })
}

impl Cutting<'_> {
    fn take(&mut self, piece: Piece, first: usize) -> Option<()> {
        let next = (first..self.seams.len()).find(|seam| piece.may_meet(&self.seams[*seam]));
        let Some(next) = next else {
            self.score += self.ground.of_panel(&self.ground.measured(&piece));
            self.panels.push(piece);
            let mut least = self.score;
            // Less a hair that is lost where stretches are merged.
            least.cost += (self.long / 1_000_000 - 1).max(0);
            return (least < self.most).then_some(());
        };
        let known = self.made[next].len();
        let mut left = Vec::new();
        piece.cut(&self.seams[next], &mut self.made[next], &mut left);
        let cut = &self.made[next][known..];
        self.long += cut.iter().map(|line| line.seam.length()).sum::<i64>();
        left.into_iter()
            .try_for_each(|piece| self.take(piece, next + 1))
    }
}

/// What stretches cost at the least, less a hair that is lost where they are merged.
pub(super) fn of_length(made: &[Stretch]) -> Score {
    let long: i64 = made.iter().map(|line| line.seam.length()).sum();
    Score {
        cost: (long / 1_000_000 - 1).max(0),
        ..Score::default()
    }
}

/// The same joints without one line, or with one line ending at another that it crosses.
fn shorter(seams: &[Seam]) -> impl Iterator<Item = Vec<Seam>> + '_ {
    let without = (0..seams.len()).map(|left_out| {
        let mut kept = seams.to_vec();
        kept.remove(left_out);
        kept
    });
    let ending = (0..seams.len()).flat_map(move |number| {
        let others = (0..seams.len()).filter(move |other| *other != number);
        others
            .filter_map(move |other| crossing(&seams[number], &seams[other]))
            .flat_map(move |at| {
                let seam = seams[number];
                [seam.part(seam.from, at), seam.part(at, seam.to)].map(|part| {
                    let mut kept = seams.to_vec();
                    // Last, when what it ends at is there.
                    kept.remove(number);
                    kept.push(part);
                    kept
                })
            })
    });
    without.chain(ending)
}

/// Where two straight lines cross, within both.
pub(super) fn crossing(one: &Seam, other: &Seam) -> Option<crate::geometry::point::Point> {
    if one.curve.is_some() || other.curve.is_some() {
        return None;
    }
    let way = one.way;
    let off = |place| way.aside(place - one.from);
    let (a, b) = (off(other.from), off(other.to));
    let near = super::ground::REACH;
    if (a < near && b < near) || (-near < a && -near < b) {
        return None;
    }
    let part = |from: i64, to: i64| {
        let run = i128::from(to - from) * i128::from(a);
        let by = i128::from(a) - i128::from(b);
        from + way::narrow(way::rounded(run * by.signum(), by.abs()))
    };
    let at = crate::geometry::point::Point::new(
        part(other.from.x, other.to.x),
        part(other.from.y, other.to.y),
    );
    let far = way.along(at - one.from);
    (near < far && far < distance(one.from, one.to) - near).then_some(at)
}

/// Stretches that go on in each other, made one.
pub(super) fn merged(mut made: Vec<Stretch>) -> Vec<Stretch> {
    let mut first = 0;
    while first < made.len() {
        let found = (first + 1..made.len())
            .find_map(|other| joined(&made[first], &made[other]).map(|whole| (other, whole)));
        match found {
            Some((other, whole)) => {
                made[first] = whole;
                made.swap_remove(other);
            }
            None => first += 1,
        }
    }
    made
}

fn joined(one: &Stretch, other: &Stretch) -> Option<Stretch> {
    let near = |a: crate::geometry::point::Point, b: crate::geometry::point::Point| {
        (a.x - b.x).abs() <= 8_000 && (a.y - b.y).abs() <= 8_000
    };
    if one.seam.curve.is_some() != other.seam.curve.is_some() {
        return None;
    }
    let flip = |line: &Stretch| Stretch {
        seam: line.seam.reversed(),
        on_joint: [line.on_joint[1], line.on_joint[0]],
    };
    let (one, other) = if near(one.seam.to, other.seam.from) {
        (*one, *other)
    } else if near(one.seam.from, other.seam.to) {
        (*other, *one)
    } else if near(one.seam.to, other.seam.to) {
        (*one, flip(other))
    } else if near(one.seam.from, other.seam.from) {
        (flip(one), *other)
    } else {
        return None;
    };
    let (into, out) = (
        one.seam.heading(one.seam.to)?,
        other.seam.heading(other.seam.from)?,
    );
    // Within a hundredth of a degree or so.
    if into.cosine(out) < 0 || way::ONE / 5_000 < into.sine(out).abs() {
        return None;
    }
    if let (Some(a), Some(b)) = (&one.seam.curve, &other.seam.curve) {
        let same =
            a.right == b.right && (a.radius - b.radius).abs() <= 8_000 && near(a.center, b.center);
        if !same || !is_half_at_most(a, &one.seam, &other.seam) {
            return None;
        }
    }
    Some(Stretch {
        seam: Seam::new(one.seam.from, other.seam.to, one.seam.curve),
        on_joint: [one.on_joint[0], other.on_joint[1]],
    })
}

fn is_half_at_most(curve: &Curve, one: &Seam, other: &Seam) -> bool {
    // π to seven places, so that two quarters are a half.
    let both = i128::from(one.length() + other.length()) * 10_000_000;
    both <= i128::from(curve.radius) * 31_415_936
}
