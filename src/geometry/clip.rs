//! The part of a polygon inside a box.

use super::point::{self, Point};

/// Twice the area of a polygon inside a box.
pub(super) fn doubled_area(polygon: &[Point], low: Point, high: Point) -> i128 {
    // Cut off what lies south of the low edge, four times, a quarter turn between.
    let mut polygon = north_of(polygon, low.y);
    for edge in [low.x, -high.y, -high.x] {
        polygon = north_of(&polygon, edge);
    }
    point::doubled_area(&polygon)
}

/// The polygon's part north of `y`, then turned by a quarter; where it falls apart, thin
/// bridges along `y` add no area.
fn north_of(polygon: &[Point], y: i64) -> Vec<Point> {
    let mut kept = Vec::with_capacity(polygon.len() + 2);
    let mut keep = |x: i64, y: i64| kept.push(Point::new(-y, x));
    let next = polygon.iter().cycle().skip(1);
    for (&a, &b) in polygon.iter().zip(next) {
        if y <= a.y {
            keep(a.x, a.y);
        }
        if (a.y < y && y < b.y) || (b.y < y && y < a.y) {
            let rise = i128::from(b.y - a.y);
            let run = i128::from(b.x - a.x) * i128::from(y - a.y);
            let across = (2 * run * rise.signum() + rise.abs()).div_euclid(2 * rise.abs());
            keep(a.x + i64::try_from(across).expect("within the edge"), y);
        }
    }
    kept
}
