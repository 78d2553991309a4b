//! One side of an outline: straight, or bulged into an arc.

use rust_decimal::Decimal;

use super::arc;
use super::compass::{Compass, Direction};
use super::line::Line;
use super::point::Point;
use crate::values::Length;

/// To what a slanted side is measured, in nanometres.
pub(super) const GRAIN: i64 = 25;

/// A side, walked with the slab on its left.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Side {
    pub from: Point,
    pub to: Point,
    /// Rise of the arc at its middle: positive outward, zero when straight.
    pub bulge: Length,
    /// Which of the legs given this side came from, counted from 0.
    pub leg: usize,
}

/// A joint, as a side is drawn and measured.
impl From<Line> for Side {
    fn from(line: Line) -> Self {
        Self {
            from: line.from,
            to: line.to,
            bulge: line.bulge,
            leg: 0,
        }
    }
}

impl Side {
    pub fn is_straight(&self) -> bool {
        self.bulge == Length::ZERO
    }

    /// The straight distance between the ends, in feet.
    pub fn chord(&self) -> Decimal {
        let (x, y) = (self.to.x - self.from.x, self.to.y - self.from.y);
        // Sides along the axes stay exact, without a square root.
        if x == 0 || y == 0 {
            return Length::nanometres(x + y).abs().feet();
        }
        // The ends were rounded to a nanometre, so a slanted side of 12 ft can come out a hair
        // longer and ask for a stake too many. 1/64 in, 0.001 in and 1 mm are whole times 25 nm.
        let squared = self.from.distance_squared(self.to);
        let long = i64::try_from(squared.isqrt()).expect("coordinates are limited on reading");
        Length::nanometres((long + GRAIN / 2) / GRAIN * GRAIN).feet()
    }

    /// Length along the side in feet, around the arc when it is bulged.
    pub fn length(&self) -> Decimal {
        if self.is_straight() {
            self.chord()
        } else {
            arc::length(self.chord(), self.bulge.abs().feet())
        }
    }

    /// Radius of a bulged side in feet.
    pub fn radius(&self) -> Option<Decimal> {
        (!self.is_straight()).then(|| arc::radius(self.chord(), self.bulge.abs().feet()))
    }

    /// Area between the arc and its chord in square feet: positive when it adds to the slab.
    pub fn bow(&self) -> Decimal {
        if self.is_straight() {
            return Decimal::ZERO;
        }
        let area = arc::segment_area(self.chord(), self.bulge.abs().feet());
        if self.bulge < Length::ZERO {
            -area
        } else {
            area
        }
    }

    /// Where it looks, away from the slab; `None` when it is slanted.
    pub fn facing(&self) -> Option<Compass> {
        let along = self.to - self.from;
        match (along.x.signum(), along.y.signum()) {
            (1, 0) => Some(Compass::South),
            (0, 1) => Some(Compass::East),
            (-1, 0) => Some(Compass::North),
            (0, -1) => Some(Compass::West),
            _ => None,
        }
    }

    /// Where it looks by eight ways: a slanted one looks between two of the four, a curve as its chord.
    pub fn looks(&self) -> Direction {
        let along = self.to - self.from;
        match (along.y.signum(), -along.x.signum()) {
            (1, 1) => Direction::NorthEast,
            (1, -1) => Direction::SouthEast,
            (1, _) => Direction::East,
            (-1, 1) => Direction::NorthWest,
            (-1, -1) => Direction::SouthWest,
            (-1, _) => Direction::West,
            (_, 1) => Direction::North,
            _ => Direction::South,
        }
    }

    pub(super) fn moved(self, by: Point) -> Self {
        Self {
            from: self.from + by,
            to: self.to + by,
            ..self
        }
    }
}
