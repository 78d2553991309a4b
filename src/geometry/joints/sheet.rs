//! A slab as loops of sides, and what is left of it between joints.

use super::seam::{Edge, Seam, edges};
use super::way::NEAR;
use crate::geometry::point::Point;

/// A part of the slab: the loop around it, counter-clockwise, then those of what is left out of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Piece {
    pub loops: Vec<Vec<Edge>>,
    low: Point,
    high: Point,
}

impl Piece {
    pub fn new(loops: Vec<Vec<Edge>>) -> Self {
        let mut piece = Self {
            loops,
            low: Point::default(),
            high: Point::default(),
        };
        let outer = &piece.loops[0];
        let (mut low, mut high) = (outer[0].at, outer[0].at);
        let mut take = |at: Point, rise: i64| {
            low = Point::new(low.x.min(at.x - rise), low.y.min(at.y - rise));
            high = Point::new(high.x.max(at.x + rise), high.y.max(at.y + rise));
        };
        for (edge, to) in edges(outer) {
            take(edge.at, 0);
            // An arc stands off its chord by no more than its rise.
            if let Some(curve) = &edge.curve {
                let rise = curve.bulge(edge.at, to).abs();
                take(edge.at, rise);
                take(to, rise);
            }
        }
        (piece.low, piece.high) = (low, high);
        piece
    }

    pub fn bounds(&self) -> (Point, Point) {
        (self.low, self.high)
    }

    pub fn corners(&self) -> Vec<Point> {
        self.loops.iter().flatten().map(|edge| edge.at).collect()
    }

    /// Twice its area, curves by their formula.
    pub fn doubled_area(&self) -> i128 {
        self.loops.iter().map(|ring| doubled_area(ring)).sum()
    }

    /// Whether a place off all sides lies in it.
    pub fn holds(&self, place: Point) -> bool {
        let mut rings = self.loops.iter().map(|ring| ring_holds(ring, place));
        rings.next() == Some(true) && rings.all(|open| !open)
    }

    pub(super) fn may_meet(&self, seam: &Seam) -> bool {
        let rise = seam.bulge().as_nanometres().abs() + NEAR;
        let (a, b) = (seam.from, seam.to);
        a.x.min(b.x) - rise <= self.high.x
            && self.low.x <= a.x.max(b.x) + rise
            && a.y.min(b.y) - rise <= self.high.y
            && self.low.y <= a.y.max(b.y) + rise
    }
}

/// Twice the area within a loop, positive when it runs counter-clockwise.
pub(super) fn doubled_area(ring: &[Edge]) -> i128 {
    let origin = ring[0].at;
    edges(ring)
        .map(|(edge, to)| {
            let bow = edge.curve.map_or(0, |c| c.doubled_segment(edge.at, to));
            origin.turn(edge.at, to) + bow
        })
        .sum()
}

/// Whether a place off the loop lies within it, however it runs.
pub(super) fn ring_holds(ring: &[Edge], place: Point) -> bool {
    let mut inside = false;
    for (edge, to) in edges(ring) {
        let (low, high) = if edge.at.y <= to.y {
            (edge.at, to)
        } else {
            (to, edge.at)
        };
        if low.y <= place.y && place.y < high.y && 0 < low.turn(high, place) {
            inside = !inside;
        }
        if let Some(curve) = &edge.curve {
            let radius = i128::from(curve.radius);
            // On the chord it lies where the test above puts it: a hair to the right, and less up.
            let turn = match edge.at.turn(to, place) {
                0 if edge.at.y == to.y => i128::from(to.x - edge.at.x),
                0 => i128::from(edge.at.y - to.y),
                turn => turn,
            };
            let beyond = if curve.right { turn < 0 } else { 0 < turn };
            if beyond && curve.center.distance_squared(place) < radius * radius {
                inside = !inside;
            }
        }
    }
    inside
}
