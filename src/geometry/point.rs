//! A place on the site.

use std::ops::{Add, Sub};

/// A place: whole nanometres east and north of where the walk began.
///
/// Ordered west to east, then south to north; ties between equal crossings break by this order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Point {
    pub x: i64,
    pub y: i64,
}

impl Point {
    pub const fn new(x: i64, y: i64) -> Self {
        Self { x, y }
    }

    /// Square of the distance from here to `other`, in square nanometres.
    pub fn distance_squared(self, other: Self) -> i128 {
        let (x, y) = (i128::from(other.x - self.x), i128::from(other.y - self.y));
        x * x + y * y
    }

    /// Twice the area of the triangle from here to `a` to `b`; positive when `b` lies left of `a`.
    pub fn turn(self, a: Self, b: Self) -> i128 {
        let (a, b) = (a - self, b - self);
        i128::from(a.x) * i128::from(b.y) - i128::from(a.y) * i128::from(b.x)
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, by: Self) -> Self {
        Self::new(self.x + by.x, self.y + by.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }
}

/// Twice the area inside a closed polygon; positive when it runs counter-clockwise.
pub fn doubled_area(polygon: &[Point]) -> i128 {
    let Some(&origin) = polygon.first() else {
        return 0;
    };
    polygon
        .windows(2)
        .map(|pair| origin.turn(pair[0], pair[1]))
        .sum()
}

/// South-west and north-east corner of the box around these points.
pub(super) fn bounds(points: &[Point]) -> (Point, Point) {
    let first = *points.first().expect("an outline has points");
    points.iter().fold((first, first), |(low, high), p| {
        (
            Point::new(low.x.min(p.x), low.y.min(p.y)),
            Point::new(high.x.max(p.x), high.y.max(p.y)),
        )
    })
}
