//! `6 ft from west and 4 ft from north`: where an opening or a box lies in its slab.

use super::reader::{Said, phrase};
use crate::geometry::{Compass, Point};
use crate::values::{Length, Unreadable};

/// From the outermost sides of the slab to the nearest sides of an opening, or to the middle of a box.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SpotPhrase {
    pub east_west: (Length, Compass),
    pub north_south: (Length, Compass),
}

impl SpotPhrase {
    /// The place in a slab whose box has these corners.
    pub fn within(self, low: Point, high: Point) -> Point {
        let (across, along) = (self.east_west, self.north_south);
        let x = if across.1 == Compass::East {
            high.x - across.0.as_nanometres()
        } else {
            low.x + across.0.as_nanometres()
        };
        let y = if along.1 == Compass::North {
            high.y - along.0.as_nanometres()
        } else {
            low.y + along.0.as_nanometres()
        };
        Point::new(x, y)
    }
}

phrase!(
    SpotPhrase,
    "place",
    "bad-spot",
    "a place in the slab",
    "write how far it is from two sides of the slab, for example `6 ft from west and 4 ft from north`",
    |said| SpotPhrase::said(said, Said::positive)
);

impl SpotPhrase {
    /// A place so far from two sides; `far` says which distances will do.
    pub(super) fn said<'a>(
        said: Said<'a>,
        far: fn(Said<'a>) -> Result<Length, Unreadable>,
    ) -> Result<Self, Unreadable> {
        let mut sides = Vec::new();
        for part in said.parts(&[" and ", ","]) {
            let (distance, side) = part.halves(" from ")?;
            sides.push((far(distance)?, side.without("the ").read::<Compass>()?));
        }
        let is_east_west = |side: Compass| matches!(side, Compass::East | Compass::West);
        sides.sort_by_key(|(_, side)| !is_east_west(*side));
        match sides[..] {
            [east_west, north_south]
                if is_east_west(east_west.1) && !is_east_west(north_south.1) =>
            {
                Ok(SpotPhrase {
                    east_west,
                    north_south,
                })
            }
            _ => Err(said.refuse()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_two_distances_in_either_order() {
        let spot = SpotPhrase {
            east_west: (Length::feet_whole(6), Compass::West),
            north_south: (Length::feet_whole(4), Compass::North),
        };
        for text in [
            "6 ft from west, 4 ft from north",
            "4 ft from north, 6 ft from west",
            "6 ft from the west and 4 ft from the north",
        ] {
            assert_eq!(text.parse(), Ok(spot), "{text}");
        }
        let others = [
            "6 ft from west",
            "6 ft from west, 4 ft from east",
            "6 ft west, 4 ft north",
        ];
        refused::<SpotPhrase>("bad-spot", &others);
        refused::<SpotPhrase>("length-without-unit", &["6 ft from west, 4 from north"]);
        refused::<SpotPhrase>("bad-direction", &["6 ft from west, 4 ft from house"]);
    }

    #[test]
    fn a_place_is_counted_from_the_sides_that_were_named() {
        let feet = |feet| Length::feet_whole(feet).as_nanometres();
        let (low, high) = (Point::new(0, 0), Point::new(feet(10), feet(8)));
        let place = |text: &str| text.parse::<SpotPhrase>().unwrap().within(low, high);
        let west_south = place("4 ft from west and 3 ft from south");
        assert_eq!(west_south, Point::new(feet(4), feet(3)));
        let north_east = place("3 ft from north, 4 ft from east");
        assert_eq!(north_east, Point::new(feet(6), feet(5)));
    }
}
