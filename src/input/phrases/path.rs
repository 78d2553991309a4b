//! `east 20 ft, bend 6 ft radius`: one leg of the middle line of a path.

use super::reader::phrase;
use crate::geometry::PathLeg;
use crate::values::Length;

/// One leg, as walked along the middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PathLegPhrase(pub PathLeg);

phrase!(
    PathLegPhrase,
    "leg",
    "bad-path",
    "a leg of a path",
    "write direction and length along the middle, for example `east 20 ft`; `east 20 ft, bend 6 ft radius` rounds the corner at its end, `east 20 ft, bulge left 18 in` is a curve",
    |said| {
        let parts = said.parts(&[","]);
        let (first, rest) = parts.split_first().expect("a phrase has a part");
        let (direction, length) = first.halves(" ")?;
        let (mut bulge, mut bend) = (None, None);
        for part in rest {
            if let Some(left) = part.after("bulge left ") {
                part.once("how far it bulges", &mut bulge, left.positive()?)?;
            } else if let Some(right) = part.after("bulge right ") {
                part.once("how far it bulges", &mut bulge, -right.positive()?)?;
            } else {
                let radius = part.need(part.after("bend "))?;
                let radius = radius.before(" radius").unwrap_or(radius).positive()?;
                part.once("how it bends", &mut bend, radius)?;
            }
        }
        Ok(PathLegPhrase(PathLeg {
            direction: direction.read()?,
            length: length.positive()?,
            bulge: bulge.unwrap_or(Length::ZERO),
            bend: bend.unwrap_or(Length::ZERO),
        }))
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;
    use crate::geometry::Direction;

    #[test]
    fn reads_a_leg_with_its_bend_or_its_bulge() {
        #[track_caller]
        fn case(text: &str, bulge: i64, bend: i64) {
            let leg = PathLeg {
                direction: Direction::East,
                length: Length::feet_whole(20),
                bulge: Length::inches_whole(bulge),
                bend: Length::inches_whole(bend),
            };
            assert_eq!(text.parse(), Ok(PathLegPhrase(leg)), "{text}");
        }
        case("east 20 ft", 0, 0);
        case("east 20 ft, bend 6 ft radius", 0, 72);
        case("east 20 ft, bend 6 ft", 0, 72);
        case("east 20 ft, bulge left 18 in", 18, 0);
        case("east 20 ft, bulge right 18 in", -18, 0);
        refused::<PathLegPhrase>(
            "bad-path",
            &["east", "east 20 ft, bulge 18 in", "east 20 ft, house"],
        );
        refused::<PathLegPhrase>("said-twice", &["east 20 ft, bend 6 ft, bend 2 ft"]);
    }
}
