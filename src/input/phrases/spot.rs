//! `6 ft from west and 4 ft from north`: where an opening or a box lies in its slab.

use std::str::FromStr;

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

impl FromStr for SpotPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let even = text.replace(" and ", ",");
        let parts: Result<Vec<(Length, Compass)>, Unreadable> =
            even.split(',').map(|part| one(part, text)).collect();
        let is_east_west = |side: Compass| matches!(side, Compass::East | Compass::West);
        match parts?[..] {
            [a, b] if is_east_west(a.1) && !is_east_west(b.1) => Ok(Self {
                east_west: a,
                north_south: b,
            }),
            [a, b] if !is_east_west(a.1) && is_east_west(b.1) => Ok(Self {
                east_west: b,
                north_south: a,
            }),
            _ => Err(refuse(text)),
        }
    }
}

fn one(part: &str, text: &str) -> Result<(Length, Compass), Unreadable> {
    let (far, side) = part.split_once(" from ").ok_or_else(|| refuse(text))?;
    let side = side.trim();
    let side = side.strip_prefix("the ").unwrap_or(side);
    Ok((super::size::positive(far)?, side.parse()?))
}

fn refuse(text: &str) -> Unreadable {
    Unreadable::new(
        "bad-spot",
        format!("cannot read `{text}` as a place in the slab"),
        "write how far it is from two sides of the slab, for example `6 ft from west and 4 ft from north`",
    )
}

#[cfg(test)]
mod tests {
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
        let code = |text: &str| text.parse::<SpotPhrase>().map_err(|e| e.code).unwrap_err();
        assert_eq!(code("6 ft from west"), "bad-spot");
        assert_eq!(code("6 ft from west, 4 ft from east"), "bad-spot");
        assert_eq!(code("6 ft west, 4 ft north"), "bad-spot");
        assert_eq!(code("6 ft from west, 4 from north"), "length-without-unit");
        assert_eq!(code("6 ft from west, 4 ft from house"), "bad-direction");
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
