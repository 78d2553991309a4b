//! The middle of an area along one way: where something evenly rising across it is as high as its mean.
//!
//! First moments: of the polygon by its triangles, of each curve by its segment, exactly.

use rust_decimal::Decimal;

use super::compass::Compass;
use super::outline::Outline;
use super::point::Point;
use super::side::Side;
use super::{arc, chords};
use crate::values::{Area, Length, rounding};

/// Decimals of a share: fewer than the series behind it give, so that a half is a half.
const PLACES: u32 = 18;

impl Outline {
    /// Where the middle of the area lies, from 0 at the end it begins to 1 at its end `toward`;
    /// these openings are no part of it, others are.
    pub fn middle<'a>(&self, toward: Compass, open: impl IntoIterator<Item = &'a Self>) -> Decimal {
        let (start, run) = (self.start(toward), self.run(toward).feet());
        let whole = (self.moment(toward, start), self.area());
        let (moment, area) = open.into_iter().fold(whole, |(moment, area), hole| {
            (moment - hole.moment(toward, start), area - hole.area())
        });
        let share = moment.checked_div(area * run).unwrap_or_default();
        rounding::to_places(share, PLACES)
    }

    /// How far the farthest place along this leg of `other` lies on the way from the start to the end
    /// `toward`; a curve within 1/32 in, as everywhere. Both halves of a circle are one leg.
    pub fn farthest(&self, toward: Compass, other: &Self, leg: usize) -> Length {
        let sides = other.sides().iter().filter(|side| side.leg == leg);
        let places = sides.flat_map(|side| chords::along(side).into_iter().chain([side.to]));
        let far = places.map(|place| along(place, toward)).max();
        let start = self.start(toward);
        Length::nanometres(far.unwrap_or(start) - start)
    }

    fn start(&self, toward: Compass) -> i64 {
        let (low, high) = self.bounds();
        along(low, toward).min(along(high, toward))
    }

    /// Cubic feet: square feet times feet from `start`, holes not taken off.
    fn moment(&self, toward: Compass, start: i64) -> Decimal {
        let far = |place: Point| along(place, toward) - start;
        let corners: Vec<Point> = self.sides().iter().map(|side| side.from).collect();
        let origin = corners[0];
        // A triangle has its middle at a third of its three corners.
        let triangles = corners.windows(2).map(|pair| {
            let doubled = Area::square_nanometres(origin.turn(pair[0], pair[1]));
            let thrice = Length::nanometres(far(origin) + far(pair[0]) + far(pair[1]));
            doubled.square_feet() * thrice.feet() / Decimal::from(6)
        });
        let curves = self.sides().iter().filter(|side| !side.is_straight());
        let curves = curves.map(|side| segment(side, toward, start));
        triangles.chain(curves).sum()
    }
}

/// What a curve adds or takes: its area at the middle of its chord, and from there outward, since
/// what it adds lies outside of the chord and what it takes inside.
fn segment(side: &Side, toward: Compass, start: i64) -> Decimal {
    let twice = Length::nanometres(along(side.from, toward) + along(side.to, toward) - 2 * start);
    let chord = side.to - side.from;
    let outward = along(Point::new(chord.y, -chord.x), toward);
    let (long, rise) = (side.chord(), side.bulge.abs().feet());
    side.bow() * twice.feet() / Decimal::TWO
        + arc::segment_moment(long, rise) * Length::nanometres(outward).feet() / long
}

/// How far a place lies that way.
const fn along(place: Point, toward: Compass) -> i64 {
    match toward {
        Compass::North => place.y,
        Compass::East => place.x,
        Compass::South => -place.y,
        Compass::West => -place.x,
    }
}

#[cfg(test)]
mod tests;
