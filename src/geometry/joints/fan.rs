//! Two straight sides that draw nearer to each other: lines between them divide the width evenly all
//! the way, as a finisher fans the joints of a drive that widens.

use super::seam::{Seam, edges};
use super::sheet::Piece;
use super::way::{self, Way, distance};
use crate::geometry::point::Point;

/// The sine of about one degree, and of about 25: what is more is a corner, no taper.
const LEAST: i64 = way::ONE / 57;
const MOST: i64 = way::ONE / 1000 * 423;

/// Both sides walked the same way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Taper {
    pub one: Seam,
    pub other: Seam,
}

/// All pairs of long sides of the rim that face each other.
pub(super) fn tapers(whole: &Piece, long: i64) -> Vec<Taper> {
    let sides = edges(&whole.loops[0]).filter(|(edge, _)| edge.curve.is_none());
    let sides: Vec<Seam> = sides
        .map(|(edge, to)| edge.seam(to))
        .filter(|side| long <= side.length())
        .collect();
    let mut found = Vec::new();
    for (number, one) in sides.iter().enumerate() {
        for other in &sides[number + 1..] {
            let other = Seam::straight(other.to, other.from);
            let turn = one.way.sine(other.way).abs();
            // The slab lies to the left of the one side and to the right of the other.
            let faces = 0 < one.way.aside(other.from - one.from)
                && 0 < one.way.aside(other.to - one.from)
                && other.way.aside(one.from - other.from) < 0
                && other.way.aside(one.to - other.from) < 0;
            if 0 < one.way.cosine(other.way) && LEAST < turn && turn < MOST && faces {
                found.push(Taper { one: *one, other });
            }
        }
    }
    found
}

impl Taper {
    /// Whether a line runs between both directions.
    pub fn holds(&self, way: Way) -> bool {
        let (one, other) = (self.one.way.sine(way), way.sine(self.other.way));
        let is_between = 0 <= one.signum() * other.signum();
        is_between && one.abs() < MOST && other.abs() < MOST
    }

    /// How wide it is at its widest.
    pub fn wide(&self) -> i64 {
        distance(self.one.from, self.other.from).max(distance(self.one.to, self.other.to))
    }

    /// Lines that divide it into so many parts, from beyond one end to beyond the other.
    pub fn lines(&self, parts: usize) -> Vec<Seam> {
        let parts = i64::try_from(parts).unwrap_or(1);
        let between = |a: Point, b: Point, n: i64| {
            let part = |from: i64, to: i64| {
                let step = i128::from(to - from) * i128::from(n);
                from + way::narrow(way::rounded(step, i128::from(parts)))
            };
            Point::new(part(a.x, b.x), part(a.y, b.y))
        };
        (1..parts)
            .filter_map(|n| {
                let from = between(self.one.from, self.other.from, n);
                let to = between(self.one.to, self.other.to, n);
                let way = Way::between(from, to)?;
                let far = distance(from, to);
                Some(Seam::straight(way.from(from, -far), way.from(to, far)))
            })
            .collect()
    }
}
