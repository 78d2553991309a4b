//! `4 ft from west and 3 ft from south`: where the middle of a box lies in its slab.

use std::str::FromStr;

use super::Compass;
use crate::geometry::Point;
use crate::values::{Length, Unreadable};

/// Measured from the outermost west or east, and the outermost north or south, of the slab.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SpotPhrase {
    across: (Length, Compass),
    along: (Length, Compass),
}

impl SpotPhrase {
    /// The place in a slab whose box has these corners.
    pub fn within(self, low: Point, high: Point) -> Point {
        let (across, along) = (self.across.0.as_nanometres(), self.along.0.as_nanometres());
        let x = if self.across.1 == Compass::East {
            high.x - across
        } else {
            low.x + across
        };
        let y = if self.along.1 == Compass::North {
            high.y - along
        } else {
            low.y + along
        };
        Point::new(x, y)
    }
}

impl FromStr for SpotPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-spot",
                format!("cannot read `{text}` as a place in the slab"),
                "measure to the middle of the box from two sides, for example `4 ft from west and 3 ft from south`",
            )
        };
        let one = |part: &str| -> Result<(Length, Compass), Unreadable> {
            let (length, side) = part.trim().split_once(" from ").ok_or_else(refuse)?;
            Ok((length.parse()?, side.parse()?))
        };
        let (first, second) = text
            .split_once(" and ")
            .or_else(|| text.split_once(','))
            .ok_or_else(refuse)?;
        let (first, second) = (one(first)?, one(second)?);
        let is_across = |side: Compass| matches!(side, Compass::East | Compass::West);
        match (is_across(first.1), is_across(second.1)) {
            (true, false) => Ok(Self {
                across: first,
                along: second,
            }),
            (false, true) => Ok(Self {
                across: second,
                along: first,
            }),
            _ => Err(refuse()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_two_distances_in_either_order() {
        #[track_caller]
        fn case(text: &str, low: Point, high: Point, east: i64, north: i64) {
            let spot: SpotPhrase = text.parse().unwrap();
            let foot = Length::feet_whole(1).as_nanometres();
            assert_eq!(
                spot.within(low, high),
                Point::new(east * foot, north * foot)
            );
        }
        let feet = Length::feet_whole;
        let (low, high) = (
            Point::new(0, 0),
            Point::new(feet(10).as_nanometres(), feet(8).as_nanometres()),
        );
        case("4 ft from west and 3 ft from south", low, high, 4, 3);
        case("3 ft from north, 4 ft from east", low, high, 6, 5);
        for text in [
            "4 ft from west",
            "4 ft from west and 3 ft from east",
            "4 ft",
            "4 from west and 3 ft from south",
        ] {
            assert!(text.parse::<SpotPhrase>().is_err(), "{text}");
        }
    }
}
