//! The outline of a slab: closed, simple, with the slab on the left of every side, and its holes.

use rust_decimal::Decimal;

use super::compass::Compass;
use super::point::Point;
use super::side::Side;
use super::walk::{ClosingError, Leg, WalkError};
use super::{arc, chords, cross, point, scan, walk};
use crate::values::{Area, Length};

/// A closed outline that does not cross itself, counter-clockwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline {
    sides: Vec<Side>,
    /// The outline as a polygon within 1/32 in; made once, since scan lines ask often.
    chords: Vec<Point>,
    circle: Option<Length>,
    pub(super) sector: Option<Length>,
    /// Of how many pieces its middle line is, when this is a path.
    pub(super) path: Option<usize>,
    /// Inside the outline, each counter-clockwise too, apart from it and from each other.
    pub(super) holes: Vec<Outline>,
    closing_error: ClosingError,
}

impl Outline {
    /// Sides in order: 0 south, 1 east, 2 north, 3 west; the south-west corner at (0, 0).
    pub fn rectangle(east_west: Length, north_south: Length) -> Self {
        let (x, y) = (east_west.as_nanometres(), north_south.as_nanometres());
        let corners = [(0, 0), (x, 0), (x, y), (0, y)].map(|(x, y)| Point::new(x, y));
        let sides = (0..4).map(|leg| Side {
            from: corners[leg],
            to: corners[(leg + 1) % 4],
            bulge: Length::ZERO,
            leg,
        });
        Self::of(sides.collect(), None)
    }

    /// A circle whose box has its south-west corner at (0, 0).
    ///
    /// Its two sides are the southern and the northern half, both of leg 0.
    pub fn circle(diameter: Length) -> Self {
        let rise = diameter.half();
        let west = Point::new(0, rise.as_nanometres());
        let east = Point::new(diameter.as_nanometres(), rise.as_nanometres());
        let half = |from, to| Side {
            from,
            to,
            bulge: rise,
            leg: 0,
        };
        Self::of(vec![half(west, east), half(east, west)], Some(diameter))
    }

    /// The outline walked by these legs, either way round, beginning at (0, 0).
    ///
    /// A closing error within `walk::closing_limit` is spread over the legs. Side 0 is
    /// always leg 0; the others follow counter-clockwise.
    ///
    /// # Errors
    /// When the legs are not a closed outline that keeps clear of itself.
    pub fn walked(legs: &[Leg]) -> Result<Self, WalkError> {
        let (sides, closing_error) = walk::closed(legs, None)?;
        let outline = Self::enclosed(sides)?;
        Ok(Self {
            closing_error,
            ..outline
        })
    }

    /// The same, with a last side straight back to the start, bulged by `bulge`.
    ///
    /// # Errors
    /// When the legs are not a closed outline that keeps clear of itself.
    pub fn walked_back(legs: &[Leg], bulge: Length) -> Result<Self, WalkError> {
        let (sides, _) = walk::closed(legs, Some(bulge))?;
        Self::enclosed(sides)
    }

    /// The outline of these sides, which follow each other either way round.
    ///
    /// # Errors
    /// When they enclose nothing, or do not keep clear of each other.
    pub(super) fn enclosed(mut sides: Vec<Side>) -> Result<Self, WalkError> {
        let corners: Vec<Point> = sides.iter().map(|side| side.from).collect();
        if point::doubled_area(&corners) < 0 {
            sides[1..].reverse();
            for side in &mut sides {
                std::mem::swap(&mut side.from, &mut side.to);
            }
        }
        let straight = sides.iter().all(Side::is_straight);
        let flat = corners.iter().all(|&c| corners[0].turn(corners[1], c) == 0);
        if straight && flat {
            return Err(WalkError::NoArea);
        }
        let outline = Self::of(sides, None);
        if let Some((first, second)) = cross::first_crossing(&outline.chain()) {
            return Err(WalkError::Crosses { first, second });
        }
        if point::doubled_area(&outline.chords) <= 0 {
            return Err(WalkError::NoArea);
        }
        Ok(outline)
    }

    pub(super) fn of(sides: Vec<Side>, circle: Option<Length>) -> Self {
        let chords = chords::polygon(&sides);
        Self {
            sides,
            chords,
            circle,
            sector: None,
            path: None,
            holes: Vec::new(),
            closing_error: ClosingError::default(),
        }
    }

    /// The chords with the leg each came from.
    pub(super) fn chain(&self) -> Vec<(Point, Point, usize)> {
        let legs = self
            .sides
            .iter()
            .flat_map(|side| vec![side.leg; chords::along(side).len()]);
        let ends = self.chords.iter().cycle().skip(1);
        self.chords
            .iter()
            .zip(ends)
            .zip(legs)
            .map(|((&from, &to), leg)| (from, to, leg))
            .collect()
    }

    /// Of the outline itself, counter-clockwise; holes have their own.
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }

    /// How far it reaches along the way to a side.
    pub fn run(&self, toward: Compass) -> Length {
        let (low, high) = self.bounds();
        Length::nanometres(match toward {
            Compass::North | Compass::South => high.y - low.y,
            Compass::East | Compass::West => high.x - low.x,
        })
    }

    /// The diameter, when this is a circle.
    pub fn is_circle(&self) -> Option<Length> {
        self.circle
    }

    /// The radius, when this is a sector of a circle.
    pub fn is_sector(&self) -> Option<Length> {
        self.sector
    }

    /// Of how many pieces its middle line is, when this is a path.
    pub fn is_path(&self) -> Option<usize> {
        self.path
    }

    /// What was left between the last corner of the walk and the first, before it was spread.
    pub fn closing_error(&self) -> ClosingError {
        self.closing_error
    }

    /// Square feet, curves by their formula, holes not taken off.
    pub fn area(&self) -> Decimal {
        if let Some(diameter) = self.circle {
            return arc::circle_area(diameter.feet());
        }
        let curves = self.sides.iter().map(Side::bow);
        curves.fold(self.corner_area(), |area, bow| area + bow)
    }

    /// Square feet of the polygon from corner to corner, as if no side were curved.
    pub fn corner_area(&self) -> Decimal {
        let corners: Vec<Point> = self.sides.iter().map(|side| side.from).collect();
        let doubled = Area::square_nanometres(point::doubled_area(&corners));
        doubled.square_feet() / Decimal::TWO
    }

    /// Feet around, curves by their formula, holes left out.
    pub fn perimeter(&self) -> Decimal {
        self.circle.map_or_else(
            || self.sides.iter().map(Side::length).sum(),
            |diameter| arc::circle_perimeter(diameter.feet()),
        )
    }

    /// A polygon within 1/32 in of the outline, counter-clockwise.
    pub fn chords(&self) -> Vec<Point> {
        self.chords.clone()
    }

    pub(super) fn polygon(&self) -> &[Point] {
        &self.chords
    }

    /// South-west and north-east corner of the box around it, curves included.
    pub fn bounds(&self) -> (Point, Point) {
        point::bounds(&self.chords)
    }

    /// Whether it is a strip, a curb or a footing: under 12 in wide. Common practice, no source.
    pub fn is_narrow(&self) -> bool {
        self.narrowest() < Length::inches_whole(12)
    }

    /// How wide a path is; of any other outline the shorter side of the box around it.
    pub fn narrowest(&self) -> Length {
        // The start of a path lies square across it.
        if let (Some(_), Some(start)) = (self.path, self.sides.last()) {
            return Length::of_feet(start.chord());
        }
        let (low, high) = self.bounds();
        Length::nanometres((high.x - low.x).min(high.y - low.y))
    }

    #[must_use]
    pub fn moved(&self, by: Point) -> Self {
        Self {
            sides: self.sides.iter().map(|side| side.moved(by)).collect(),
            chords: self.chords.iter().map(|&p| p + by).collect(),
            circle: self.circle,
            sector: self.sector,
            path: self.path,
            holes: self.holes.iter().map(|hole| hole.moved(by)).collect(),
            closing_error: self.closing_error,
        }
    }

    /// East-west and north-south size, when this is a rectangle along the axes.
    pub fn is_rectangle(&self) -> Option<(Length, Length)> {
        let (low, high) = self.bounds();
        let on_box = |side: &Side| {
            let on_x = side.from.x == side.to.x && (side.from.x == low.x || side.from.x == high.x);
            let on_y = side.from.y == side.to.y && (side.from.y == low.y || side.from.y == high.y);
            side.is_straight() && (on_x || on_y)
        };
        self.sides.iter().all(on_box).then(|| {
            (
                Length::nanometres(high.x - low.x),
                Length::nanometres(high.y - low.y),
            )
        })
    }

    /// Where the east-west line at `y` has slab on both sides, west to east.
    pub fn spans_at_y(&self, y: i64) -> Vec<(i64, i64)> {
        scan::spans(&self.rings(), y)
    }

    /// Where the north-south line at `x` has slab on both sides, south to north.
    pub fn spans_at_x(&self, x: i64) -> Vec<(i64, i64)> {
        scan::spans_at_x(&self.rings(), x)
    }
}

#[cfg(test)]
mod tests;
