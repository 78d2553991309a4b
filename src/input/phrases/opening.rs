//! `8 in round`, `12 in x 18 in`: the hole a box makes in a slab.

use super::reader::phrase;
use crate::geometry::{Outline, Point};
use crate::values::Length;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpeningPhrase {
    Round(Length),
    /// East-west, then north-south.
    Rectangle(Length, Length),
}

impl OpeningPhrase {
    /// The hole with its middle there, `margin` wider on every side.
    pub fn around(self, middle: Point, margin: Length) -> Outline {
        let both = margin * 2;
        let outline = match self {
            Self::Round(diameter) => Outline::circle(diameter + both),
            Self::Rectangle(east_west, north_south) => {
                Outline::rectangle(east_west + both, north_south + both)
            }
        };
        let (_, high) = outline.bounds();
        outline.moved(middle - Point::new(high.x / 2, high.y / 2))
    }

    /// Whether two holes, each at its place, have ground in common; touching is not.
    pub fn meets(self, middle: Point, other: Self, there: Point) -> bool {
        if let (Self::Round(one), Self::Round(two)) = (self, other) {
            // Doubled, so that half a nanometre is not lost.
            let reach = i128::from((one + two).as_nanometres());
            return 4 * middle.distance_squared(there) < reach * reach;
        }
        let (low, high) = self.around(middle, Length::ZERO).bounds();
        let (other_low, other_high) = other.around(there, Length::ZERO).bounds();
        low.x < other_high.x && other_low.x < high.x && low.y < other_high.y && other_low.y < high.y
    }
}

phrase!(
    OpeningPhrase,
    "size",
    "bad-opening",
    "the opening of a box",
    "write `8 in round` or `12 in x 18 in`, east-west first",
    |said| {
        if let Some(diameter) = said.before(" round").or_else(|| said.after("circle ")) {
            return diameter.positive().map(OpeningPhrase::Round);
        }
        match said.parts(&["x", "×"])[..] {
            [a, b] => Ok(OpeningPhrase::Rectangle(a.positive()?, b.positive()?)),
            _ => Err(said.refuse()),
        }
    }
);

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_round_and_square_openings() {
        let inches = Length::inches_whole;
        assert_eq!("8 in round".parse(), Ok(OpeningPhrase::Round(inches(8))));
        assert_eq!("circle 8 in".parse(), Ok(OpeningPhrase::Round(inches(8))));
        assert_eq!(
            "12 in x 18 in".parse(),
            Ok(OpeningPhrase::Rectangle(inches(12), inches(18)))
        );
        let others = ["8 in", "round", "12 in x 18 in x 4 in"];
        refused::<OpeningPhrase>("bad-opening", &others);
    }

    #[test]
    fn round_holes_meet_by_their_distance_and_others_by_their_sides() {
        let inches = |n: i64| Length::inches_whole(n).as_nanometres();
        let at = |x: i64, y: i64| Point::new(inches(x), inches(y));
        let round = OpeningPhrase::Round(Length::inches_whole(8));
        let square = OpeningPhrase::Rectangle(Length::inches_whole(8), Length::inches_whole(8));
        for (one, other, x, y, meets) in [
            (round, round, 6, 6, false),
            (round, round, 5, 5, true),
            (round, round, 8, 0, false),
            (square, square, 6, 6, true),
            (square, round, 8, 0, false),
            (square, round, 7, 0, true),
        ] {
            assert_eq!(one.meets(at(0, 0), other, at(x, y)), meets, "{x}, {y}");
        }
    }

    #[test]
    fn stands_around_its_middle() {
        let middle = Point::new(1_000_000_000, 2_000_000_000);
        for opening in [
            OpeningPhrase::Round(Length::inches_whole(8)),
            OpeningPhrase::Rectangle(Length::inches_whole(12), Length::inches_whole(18)),
        ] {
            let (low, high) = opening.around(middle, Length::inches_whole(2)).bounds();
            assert_eq!(i64::midpoint(low.x, high.x), middle.x);
            assert_eq!(i64::midpoint(low.y, high.y), middle.y);
        }
    }
}
