//! Sides of panels and joints, straight or arcs.

use super::curve::Curve;
use super::way::{Way, distance};
use crate::geometry::point::Point;
use crate::values::Length;

/// What lies on the right of a side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Beyond {
    Rim,
    Joint,
    /// An opening, a box or something solid, by its number.
    Thing(usize),
}

/// A side of a panel from here to where the next one begins, the panel on its left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Edge {
    pub at: Point,
    pub curve: Option<Curve>,
    pub beyond: Beyond,
    /// Of a straight one, kept since it is asked for often.
    pub way: Way,
}

/// A joint or a stretch of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Seam {
    pub from: Point,
    pub to: Point,
    pub curve: Option<Curve>,
    /// Straight from end to end.
    pub way: Way,
}

impl Seam {
    pub fn new(from: Point, to: Point, curve: Option<Curve>) -> Self {
        Self {
            from,
            to,
            curve,
            way: Way::between(from, to).unwrap_or(Way::EAST),
        }
    }

    pub fn straight(from: Point, to: Point) -> Self {
        Self::new(from, to, None)
    }

    /// The part between two of its places.
    pub fn part(&self, from: Point, to: Point) -> Self {
        match self.curve {
            None => Self { from, to, ..*self },
            Some(_) => Self::new(from, to, self.curve),
        }
    }

    pub fn length(&self) -> i64 {
        match &self.curve {
            None => self.way.along(self.to - self.from),
            Some(curve) => curve.length(self.from, self.to),
        }
    }

    pub fn bulge(&self) -> Length {
        let bulge = self
            .curve
            .map_or(0, |curve| curve.bulge(self.from, self.to));
        Length::nanometres(bulge)
    }

    /// Its direction where it begins and where it ends.
    pub fn heading(&self, at: Point) -> Option<Way> {
        match &self.curve {
            None => Some(self.way),
            Some(curve) => curve.heading(at),
        }
    }

    pub fn reversed(&self) -> Self {
        Self {
            from: self.to,
            to: self.from,
            curve: self.curve.map(Curve::reversed),
            way: self.way.back(),
        }
    }

    /// The nearest it comes to a place, when that is no farther than `reach`.
    pub fn near(&self, place: Point, reach: i64) -> Option<i64> {
        let rise = self.curve.map_or(0, |_| self.bulge().as_nanometres().abs());
        let (a, b, out) = (self.from, self.to, reach + rise);
        if place.x < a.x.min(b.x) - out
            || a.x.max(b.x) + out < place.x
            || place.y < a.y.min(b.y) - out
            || a.y.max(b.y) + out < place.y
        {
            return None;
        }
        let off = match &self.curve {
            None => {
                let far = self.way.along(place - a);
                if far < 0 {
                    distance(a, place)
                } else if self.way.along(b - a) < far {
                    distance(b, place)
                } else {
                    self.way.aside(place - a).abs()
                }
            }
            Some(curve) => {
                let out = Way::between(curve.center, place);
                let on = out.map(|way| way.from(curve.center, curve.radius));
                if on.is_some_and(|on| curve.holds(a, b, on)) {
                    (distance(curve.center, place) - curve.radius).abs()
                } else {
                    distance(a, place).min(distance(b, place))
                }
            }
        };
        (off <= reach).then_some(off)
    }

    pub fn is_near(&self, place: Point, reach: i64) -> bool {
        self.near(place, reach).is_some()
    }
}

impl Edge {
    pub fn seam(&self, to: Point) -> Seam {
        match self.curve {
            None => Seam {
                from: self.at,
                to,
                curve: None,
                way: self.way,
            },
            Some(_) => Seam::new(self.at, to, self.curve),
        }
    }
}

/// Each edge of a loop with its end.
pub(super) fn edges(ring: &[Edge]) -> impl Iterator<Item = (&Edge, Point)> {
    let ends = ring[1..].iter().chain(&ring[..1]);
    ring.iter().zip(ends.map(|edge| edge.at))
}

/// The direction in which an edge begins.
pub(super) fn heading(edge: &Edge) -> Option<Way> {
    match &edge.curve {
        None => Some(edge.way),
        Some(curve) => curve.heading(edge.at),
    }
}

/// The direction in which an edge ends.
pub(super) fn heading_at_end(ring: &[Edge], edge: usize) -> Option<Way> {
    let to = ring[(edge + 1) % ring.len()].at;
    match &ring[edge].curve {
        None => Some(ring[edge].way),
        Some(curve) => curve.heading(to),
    }
}
