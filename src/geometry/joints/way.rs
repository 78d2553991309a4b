//! Directions across a slab, in whole numbers: turned and mirrored slabs give turned and mirrored ways.

use crate::geometry::point::Point;

/// How many parts a step of one has.
pub(super) const ONE: i64 = 1 << 40;
/// Nearer than this is the same place: two thousandths of a millimetre.
pub(super) const NEAR: i64 = 2_000;

/// A direction: a step of `ONE`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Way {
    pub x: i64,
    pub y: i64,
}

impl Way {
    pub const EAST: Self = Self { x: ONE, y: 0 };

    /// `None` between places that are one.
    pub fn between(from: Point, to: Point) -> Option<Self> {
        let (x, y) = (i128::from(to.x - from.x), i128::from(to.y - from.y));
        // Twenty places more, so that a step of a foot points as exactly as one of a mile.
        let far = ((x * x + y * y) << 40).isqrt();
        if far == 0 {
            return None;
        }
        let part = |v: i128| narrow(rounded(v << 60, far));
        Some(Self {
            x: part(x),
            y: part(y),
        })
    }

    pub fn left(self) -> Self {
        Self {
            x: -self.y,
            y: self.x,
        }
    }

    pub fn back(self) -> Self {
        Self {
            x: -self.x,
            y: -self.y,
        }
    }

    /// How far a step goes along this way.
    pub fn along(self, step: Point) -> i64 {
        scaled(i128::from(self.x) * i128::from(step.x) + i128::from(self.y) * i128::from(step.y))
    }

    /// How far a step goes to the left of this way.
    pub fn aside(self, step: Point) -> i64 {
        scaled(i128::from(self.x) * i128::from(step.y) - i128::from(self.y) * i128::from(step.x))
    }

    /// Cosine of the angle to another way, in parts of `ONE`.
    pub fn cosine(self, other: Self) -> i64 {
        self.along(Point::new(other.x, other.y))
    }

    /// Sine of the angle to another way, positive when that turns left.
    pub fn sine(self, other: Self) -> i64 {
        self.aside(Point::new(other.x, other.y))
    }

    pub fn from(self, place: Point, far: i64) -> Point {
        let step = |part: i64| scaled(i128::from(part) * i128::from(far));
        place + Point::new(step(self.x), step(self.y))
    }
}

fn scaled(product: i128) -> i64 {
    narrow((product + (1 << 39)) >> 40)
}

/// The nearest whole quotient.
pub(super) fn rounded(number: i128, by: i128) -> i128 {
    (2 * number + by).div_euclid(2 * by)
}

pub(super) fn narrow(number: i128) -> i64 {
    i64::try_from(number).expect("coordinates are limited on reading")
}

/// The distance between two places to the nearest nanometre.
pub(super) fn distance(one: Point, other: Point) -> i64 {
    narrow(((4 * one.distance_squared(other)).isqrt() + 1) / 2)
}

pub(super) fn is_near(one: Point, other: Point, reach: i64) -> bool {
    (one.x - other.x).abs() <= reach
        && (one.y - other.y).abs() <= reach
        && one.distance_squared(other) <= i128::from(reach) * i128::from(reach)
}
