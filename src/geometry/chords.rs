//! Arcs as chords, within 1/32 in, each point rounded to a nanometre once.

use rust_decimal::{Decimal, prelude::ToPrimitive};
use rust_decimal_macros::dec;

use super::arc;
use super::point::Point;
use super::side::{GRAIN, Side};
use crate::values::{Length, rounding};

/// How far a chord may stand off its arc.
const CLOSE: Length = Length::sixty_fourths(2);

impl Side {
    /// Places along it, both ends too; of a curve close enough to draw it.
    pub fn places(&self) -> Vec<Point> {
        let mut places = along(self);
        places.push(self.to);
        places
    }

    /// The place so far along it from its first corner; none beyond its end. Of a curve, on its chords.
    pub fn at(&self, far: Length) -> Option<Point> {
        let mut left = i128::from(far.as_nanometres());
        for pair in self.places().windows(2) {
            let long = pair[0].distance_squared(pair[1]).isqrt();
            // What was measured on a slant may be a hair longer than it is.
            if left <= long + i128::from(GRAIN) {
                let part = |run: i64| {
                    let run = 2 * i128::from(run) * left.min(long) + long;
                    i64::try_from(run.div_euclid(2 * long.max(1))).ok()
                };
                let along = pair[1] - pair[0];
                return Some(pair[0] + Point::new(part(along.x)?, part(along.y)?));
            }
            left -= long;
        }
        None
    }
}

/// The polygon of these sides; each side gives its start and the points along its arc.
pub(super) fn polygon(sides: &[Side]) -> Vec<Point> {
    sides.iter().flat_map(along).collect()
}

/// The points of one side, without its end.
pub(super) fn along(side: &Side) -> Vec<Point> {
    if side.is_straight() {
        return vec![side.from];
    }
    // Both halves of an arc are alike, so the number of chords is a power of two.
    let mut points = vec![side.from, side.to];
    let mut rise = side.bulge.feet();
    let mut t = dec!(2) * rise / side.chord();
    while CLOSE.feet() < rise.abs() {
        points = halved(&points, t);
        t = arc::half(t);
        let pair = Side {
            from: points[0],
            to: points[1],
            ..*side
        };
        rise = t * pair.chord() / dec!(2);
    }
    points.pop();
    points
}

/// Puts the top of the arc between each pair of neighbours.
fn halved(points: &[Point], t: Decimal) -> Vec<Point> {
    let mut all = vec![points[0]];
    for pair in points.windows(2) {
        let (x, y) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
        let (dx, dy) = (Decimal::from(x), Decimal::from(y));
        let top = |half: Decimal| {
            rounding::to_places(half / dec!(2), 0)
                .to_i64()
                .expect("coordinates are limited on reading")
        };
        all.push(pair[0] + Point::new(top(dx + t * dy), top(dy - t * dx)));
        all.push(pair[1]);
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    const FOOT: i64 = 304_800_000;

    #[test]
    fn every_chord_keeps_within_a_thirty_second_of_an_inch() {
        let side = Side {
            from: Point::new(0, 0),
            to: Point::new(18 * FOOT, 0),
            bulge: Length::feet_whole(9),
            leg: 0,
        };
        let points = along(&side);
        let radius = i128::from(9 * FOOT);
        let center = Point::new(9 * FOOT, 0);
        let near = radius - i128::from(CLOSE.as_nanometres());
        for pair in points.windows(2) {
            let off = center.distance_squared(pair[0]) - radius * radius;
            assert!(off.abs() < 4 * radius, "a point off the circle by {off}");
            let middle = Point::new(
                i64::midpoint(pair[0].x, pair[1].x),
                i64::midpoint(pair[0].y, pair[1].y),
            );
            assert!(near * near <= center.distance_squared(middle));
            assert!(pair[0].y <= 0, "outward of an eastward side is south");
        }
    }
}
