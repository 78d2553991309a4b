//! Shapes that are not rectangles or circles: triangles, trapezoids, rings, sectors.

use super::angle::{self, Angle};
use super::compass::Direction;
use super::holes::HoleError;
use super::outline::Outline;
use super::point::Point;
use super::side::Side;
use super::walk::WalkError;
use crate::values::Length;

impl Outline {
    /// A triangle with its right angle at a corner of its box: northeast, southeast, southwest or northwest.
    ///
    /// # Errors
    /// When a length is zero.
    pub fn right_triangle(
        east_west: Length,
        north_south: Length,
        square: Direction,
    ) -> Result<Self, WalkError> {
        let (x, y) = (east_west.as_nanometres(), north_south.as_nanometres());
        let corners = [(0, 0), (x, 0), (x, y), (0, y)].map(|(x, y)| Point::new(x, y));
        let opposite = match square {
            Direction::NorthEast => 0,
            Direction::NorthWest => 1,
            Direction::SouthEast => 3,
            Direction::North
            | Direction::East
            | Direction::South
            | Direction::SouthWest
            | Direction::West => 2,
        };
        let kept = (0..4).filter(|&i| i != opposite).map(|i| corners[i]);
        Self::cornered(&kept.map(|at| (at, Length::ZERO)).collect::<Vec<_>>())
    }

    /// A triangle by its sides: the first along the south, the second from its east end, the third back.
    ///
    /// # Errors
    /// When one side is as long as the two others together, or longer.
    pub fn triangle(sides: [Length; 3]) -> Result<Self, WalkError> {
        let [first, second, third] = sides.map(|side| i128::from(side.as_nanometres()));
        if first + second <= third || second + third <= first || first + third <= second {
            return Err(WalkError::NoArea);
        }
        // The apex lies where both other sides end: east = (first² + third² − second²) ÷ 2 first,
        // north = √(third² − east²), each to the nearest nanometre.
        let doubled = first * first + third * third - second * second;
        let east = (doubled + first).div_euclid(2 * first);
        let squared = third * third - east * east;
        let floor = squared.isqrt();
        let north = floor + i128::from((2 * floor + 1).pow(2) <= 4 * squared);
        let whole = |n: i128| i64::try_from(n).expect("within the longest side");
        let corners = [
            Point::default(),
            Point::new(whole(first), 0),
            Point::new(whole(east), whole(north)),
        ];
        Self::cornered(&corners.map(|at| (at, Length::ZERO)))
    }

    /// Two sides along the south and the north, `apart`; their west or east ends in line, else their middles.
    ///
    /// # Errors
    /// When a length is zero.
    pub fn trapezoid(
        south: Length,
        north: Length,
        apart: Length,
        square: Option<Direction>,
    ) -> Result<Self, WalkError> {
        let west = match square {
            Some(Direction::West) => Length::ZERO,
            Some(Direction::East) => south - north,
            _ => (south - north).half(),
        };
        let corner = |x: Length, y: Length| Point::new(x.as_nanometres(), y.as_nanometres());
        let corners = [
            Point::default(),
            corner(south, Length::ZERO),
            corner(west + north, apart),
            corner(west, apart),
        ];
        Self::cornered(&corners.map(|at| (at, Length::ZERO)))
    }

    /// A circle with a smaller circle left open in its middle.
    ///
    /// # Errors
    /// When the smaller one is not smaller.
    pub fn ring(outside: Length, inside: Length) -> Result<Self, HoleError> {
        if outside <= inside {
            return Err(HoleError::MeetsOutline);
        }
        let off = (outside - inside).half().as_nanometres();
        let hole = Self::circle(inside).moved(Point::new(off, off));
        Self::circle(outside).with_hole(hole)
    }

    /// A part of a circle between two radii, its middle `toward` that direction from the centre at (0, 0).
    ///
    /// Leg 1 is the arc; legs 0 and 2 are the radii, and of a half circle leg 0 is the flat side.
    ///
    /// # Errors
    /// When it is so small that its ends fall together.
    pub fn sector(radius: Length, angle: Angle, toward: Direction) -> Result<Self, WalkError> {
        let (middle, half) = (toward.eighths(), angle.eighths() / 2);
        let at = |eighths: i32| angle::place(radius, middle + eighths);
        let (start, end) = (at(-half), at(half));
        let straight = |from, to, leg| Side {
            from,
            to,
            bulge: Length::ZERO,
            leg,
        };
        let arc = |from, to, half| Side {
            from,
            to,
            bulge: angle::rise(radius, half),
            leg: 1,
        };
        let center = Point::default();
        let sides = if angle == Angle::HALF {
            vec![straight(end, start, 0), arc(start, end, half)]
        } else if angle.eighths() < Angle::HALF.eighths() {
            vec![
                straight(center, start, 0),
                arc(start, end, half),
                straight(end, center, 2),
            ]
        } else {
            // No arc rises over half its chord, so a large one is two.
            vec![
                straight(center, start, 0),
                arc(start, at(0), half / 2),
                arc(at(0), end, half / 2),
                straight(end, center, 2),
            ]
        };
        if sides.iter().any(|side| side.chord().is_zero()) {
            return Err(WalkError::NoArea);
        }
        let mut sector = Self::of(sides, None);
        sector.sector = Some(radius);
        Ok(sector)
    }

    /// A part of a ring between two radii, its middle `toward` that direction from the centre at (0, 0).
    ///
    /// Legs 0 and 2 are straight, leg 1 is the outer arc and leg 3 the inner one.
    ///
    /// # Errors
    /// When the inner radius is not smaller, or ends fall together.
    pub fn ring_sector(
        outside: Length,
        inside: Length,
        angle: Angle,
        toward: Direction,
    ) -> Result<Self, WalkError> {
        if outside <= inside {
            return Err(WalkError::NoArea);
        }
        let (middle, half) = (toward.eighths(), angle.eighths() / 2);
        let at = |radius, eighths: i32| angle::place(radius, middle + eighths);
        // No arc rises over half its chord, so a large one is two.
        let turns = if angle.eighths() <= Angle::HALF.eighths() {
            vec![-half, half]
        } else {
            vec![-half, 0, half]
        };
        let step = 2 * half / (i32::try_from(turns.len()).expect("two or three") - 1) / 2;
        let arc = |radius, from, to, leg| Side {
            from: at(radius, from),
            to: at(radius, to),
            bulge: if from < to {
                angle::rise(radius, step)
            } else {
                -angle::rise(radius, step)
            },
            leg,
        };
        let straight = |from, to, leg| Side {
            from,
            to,
            bulge: Length::ZERO,
            leg,
        };
        let mut sides = vec![straight(at(inside, -half), at(outside, -half), 0)];
        sides.extend(
            turns
                .windows(2)
                .map(|turn| arc(outside, turn[0], turn[1], 1)),
        );
        sides.push(straight(at(outside, half), at(inside, half), 2));
        let back = turns.windows(2).rev();
        sides.extend(back.map(|turn| arc(inside, turn[1], turn[0], 3)));
        if sides.iter().any(|side| side.chord().is_zero()) {
            return Err(WalkError::NoArea);
        }
        let mut sector = Self::of(sides, None);
        sector.sector = Some(outside);
        Ok(sector)
    }

    /// Straight from corner to corner and back to the first, or bulged where a corner says so; either way round.
    ///
    /// # Errors
    /// When the sides enclose nothing or do not keep clear of each other.
    pub fn cornered(corners: &[(Point, Length)]) -> Result<Self, WalkError> {
        let ends = corners.iter().cycle().skip(1);
        let sides: Vec<Side> = corners
            .iter()
            .zip(ends)
            .enumerate()
            .map(|(leg, (&(from, bulge), &(to, _)))| Side {
                from,
                to,
                bulge,
                leg,
            })
            .collect();
        let bulged = corners.iter().any(|(_, bulge)| *bulge != Length::ZERO);
        if sides.len() < 2 || (sides.len() == 2 && !bulged) {
            return Err(WalkError::TooFew);
        }
        for side in &sides {
            if side.from == side.to {
                let next = (side.leg + 1) % sides.len();
                let (first, second) = (side.leg.min(next), side.leg.max(next));
                return Err(WalkError::Crosses { first, second });
            }
            if side.chord() < side.bulge.abs().feet() * rust_decimal::Decimal::TWO {
                return Err(WalkError::BulgeTooDeep { leg: side.leg });
            }
        }
        Self::enclosed(sides)
    }
}

#[cfg(test)]
mod tests;
