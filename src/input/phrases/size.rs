//! `12 ft x 15 ft`, `12 ft x 15 ft x 4 in`, `circle 12 ft`, `432 sq ft x 8 in`.

use std::str::FromStr;

use super::ShapePhrase;
use crate::values::{Amount, Length, Unit, Unreadable};

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

impl FromStr for SizePhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-size",
                format!("cannot read `{text}` as a size"),
                "write `12 ft x 15 ft` or `circle 12 ft`; also triangle, trapezoid, ring, sector, half circle or quarter circle, and for removal `22 ft x 3 ft x 4 in`",
            )
        };
        let text = text.trim();
        if let Some(diameter) = text.strip_prefix("circle ") {
            return Ok(Self::Circle {
                diameter: positive(diameter)?,
            });
        }
        if let Some(shape) = ShapePhrase::read(text) {
            return shape.map(Self::Shape);
        }
        let by = text.replace(" by ", " x ");
        // No unit of length has an x in it, so `12'x15'` reads as well as `12 ft x 15 ft`.
        let parts: Vec<&str> = by.split(['x', 'X', '×']).map(str::trim).collect();
        match parts[..] {
            [a, b] if a.contains("sq") => {
                let square_feet: Amount = a.parse()?;
                if square_feet.unit != Unit::SquareFoot || square_feet.value.is_zero() {
                    return Err(refuse());
                }
                Ok(Self::AreaDeep {
                    square_feet,
                    depth: positive(b)?,
                })
            }
            [a, b] => Ok(Self::Rectangle {
                east_west: positive(a)?,
                north_south: positive(b)?,
            }),
            [a, b, c] => Ok(Self::Block {
                length: positive(a)?,
                width: positive(b)?,
                depth: positive(c)?,
            }),
            _ => Err(refuse()),
        }
    }
}

/// A length above zero.
///
/// # Errors
/// When it cannot be read, or is zero.
pub fn positive(text: &str) -> Result<Length, Unreadable> {
    if let Some(rest) = text.trim().strip_prefix('-') {
        return Err(Unreadable::new(
            "not-above-zero",
            format!("`{}` is below zero", text.trim()),
            format!("a size is above zero; did you mean `{rest}`?"),
        ));
    }
    let length: Length = text.parse()?;
    if length == Length::ZERO {
        return Err(Unreadable::new(
            "not-above-zero",
            format!("`{}` is nothing", text.trim()),
            "a size is above zero; leave the line out if there is nothing there",
        ));
    }
    Ok(length)
}

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
