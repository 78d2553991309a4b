//! `24 ft, 12 ft`: a corner of an outline, so far east and so far north of a fixed point.

use std::str::FromStr;

use super::side::Along;
use crate::geometry::Point;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug)]
pub struct CornerPhrase {
    pub at: Point,
    /// Of the side from here to the next corner.
    pub along: Along,
}

impl FromStr for CornerPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let mut parts = text.split(',').map(str::trim);
        let (Some(east), Some(north)) = (parts.next(), parts.next()) else {
            return Err(Unreadable::new(
                "bad-corner",
                format!("cannot read `{text}` as a corner"),
                "write how far east and how far north of one fixed point, for example `24 ft, 12 ft`; west and south are below zero, `-3 ft`",
            ));
        };
        Ok(Self {
            at: Point::new(
                signed(east)?.as_nanometres(),
                signed(north)?.as_nanometres(),
            ),
            along: Along::read(parts)?,
        })
    }
}

/// A length that may be zero, or below zero.
fn signed(text: &str) -> Result<Length, Unreadable> {
    match text.strip_prefix('-') {
        Some(rest) => Ok(-rest.trim().parse::<Length>()?),
        None => text.parse(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::input::job::EdgeKind;

    #[test]
    fn reads_corners_and_what_stands_along_the_side_after_them() {
        let corner: CornerPhrase = "24 ft, -3 ft 6 in, against house".parse().unwrap();
        let south = Length::inches_whole(-42).as_nanometres();
        assert_eq!(
            corner.at,
            Point::new(Length::feet_whole(24).as_nanometres(), south)
        );
        assert_eq!(corner.along.against, Some(EdgeKind::House));
        let bowed: CornerPhrase = "0 ft, 12 ft, bulge 18 in".parse().unwrap();
        assert_eq!(bowed.along.bulge, Length::inches_whole(18));
        let code = |text: &str| {
            text.parse::<CornerPhrase>()
                .map_err(|e| e.code)
                .unwrap_err()
        };
        assert_eq!(code("24 ft"), "bad-corner");
        assert_eq!(code("24, 12 ft"), "length-without-unit");
        assert_eq!(code("24 ft, 12 ft, garden"), "unknown-edge");
    }
}
