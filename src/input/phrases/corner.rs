//! `24 ft, 12 ft`: a corner of an outline, so far east and so far north of a fixed point.

use super::reader::{Said, phrase};
use super::side::Along;
use crate::geometry::Point;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug)]
pub struct CornerPhrase {
    pub at: Point,
    /// Of the side from here to the next corner.
    pub along: Along,
}

phrase!(
    CornerPhrase,
    "position",
    "bad-corner",
    "a corner",
    "write how far east and how far north of one fixed point, for example `24 ft, 12 ft`; west and south are below zero, `-3 ft`",
    |said| {
        let parts = said.parts(&[","]);
        let [east, north, along @ ..] = &parts[..] else {
            return Err(said.refuse());
        };
        let (east, north) = (signed(*east)?, signed(*north)?);
        Ok(CornerPhrase {
            at: Point::new(east.as_nanometres(), north.as_nanometres()),
            along: Along::read(along)?,
        })
    }
);

/// A length that may be zero, or below zero.
fn signed(said: Said<'_>) -> Result<Length, Unreadable> {
    match said.after("-") {
        Some(length) => Ok(-length.read::<Length>()?),
        None => said.read(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::EdgeKind;
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_corners_and_what_stands_along_the_side_after_them() {
        let corner: CornerPhrase = "24 ft, -3 ft 6 in, against house".parse().unwrap();
        let (east, south) = (Length::feet_whole(24), Length::inches_whole(-42));
        let wanted = Point::new(east.as_nanometres(), south.as_nanometres());
        assert_eq!(corner.at, wanted);
        assert_eq!(corner.along.against, Some(EdgeKind::House));
        let bowed: CornerPhrase = "0 ft, 12 ft, bulge 18 in".parse().unwrap();
        assert_eq!(bowed.along.bulge, Length::inches_whole(18));
        refused::<CornerPhrase>("bad-corner", &["24 ft"]);
        refused::<CornerPhrase>("length-without-unit", &["24, 12 ft"]);
        refused::<CornerPhrase>("unknown-edge", &["24 ft, 12 ft, garden"]);
        let twice = [
            "24 ft, 12 ft, bulge 1 ft, bulge 2 ft",
            "0 ft, 1 ft, house, curb",
        ];
        refused::<CornerPhrase>("said-twice", &twice);
    }
}
