//! `12 ft x 15 ft`, `12 ft x 15 ft x 4 in`, `circle 12 ft`, `432 sq ft x 8 in`.

use super::ShapePhrase;
use super::reader::phrase;
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizePhrase {
    /// East-west, then north-south.
    Rectangle {
        east_west: Length,
        north_south: Length,
    },
    Circle {
        diameter: Length,
    },
    Block {
        length: Length,
        width: Length,
        depth: Length,
    },
    Shape(ShapePhrase),
    /// An area measured elsewhere, and a depth.
    AreaDeep {
        square_feet: Amount,
        depth: Length,
    },
}

phrase!(
    SizePhrase,
    "size",
    "bad-size",
    "a size",
    "write `12 ft x 15 ft` or `circle 12 ft`; also triangle, trapezoid, ring, sector, ring sector, half circle or quarter circle, and for removal `22 ft x 3 ft x 4 in`",
    |said| {
        if let Some(diameter) = said.after("circle ") {
            let diameter = diameter.positive()?;
            return Ok(SizePhrase::Circle { diameter });
        }
        if let Some(shape) = ShapePhrase::read(said) {
            return shape.map(SizePhrase::Shape);
        }
        // No unit of length has an x in it, so `12'x15'` reads as well as `12 ft x 15 ft`.
        match said.parts(&[" by ", "x", "X", "×"])[..] {
            [a, b] if a.text().contains("sq") => {
                let square_feet: Amount = a.read()?;
                if square_feet.unit != Unit::SquareFoot || square_feet.value.is_zero() {
                    return Err(said.refuse());
                }
                Ok(SizePhrase::AreaDeep {
                    square_feet,
                    depth: b.positive()?,
                })
            }
            [a, b] => Ok(SizePhrase::Rectangle {
                east_west: a.positive()?,
                north_south: b.positive()?,
            }),
            [a, b, c] => Ok(SizePhrase::Block {
                length: a.positive()?,
                width: b.positive()?,
                depth: c.positive()?,
            }),
            _ => Err(said.refuse()),
        }
    }
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_sizes_as_people_write_them() {
        let wanted = SizePhrase::Rectangle {
            east_west: Length::feet_whole(12),
            north_south: Length::feet_whole(15),
        };
        for text in [
            "12 ft x 15 ft",
            "12'x15'",
            "12ft X 15ft",
            "12 ft by 15 ft",
            "12 ft × 15 ft",
        ] {
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        for text in ["12 ft", "12 ft x", "twelve", "12 ft x 15 ft x 4 in x 2 in"] {
            assert!(text.parse::<SizePhrase>().is_err(), "{text}");
        }
    }
}
