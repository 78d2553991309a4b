//! The largest stone that suits a slab.
//!
//! Source: US Army training text EN5466, passage seen: a third of the slab's
//! depth, a fifth of the narrowest form, three quarters of the clear space
//! between bars.

use crate::values::Length;

/// The sizes in which aggregate is sold.
pub const USUAL: [Length; 6] = [
    Length::sixty_fourths(24),
    Length::sixty_fourths(32),
    Length::sixty_fourths(48),
    Length::sixty_fourths(64),
    Length::sixty_fourths(96),
    Length::sixty_fourths(128),
];

/// The limit for a slab: a third of its thickness.
pub fn limit(thickness: Length) -> Length {
    Length::nanometres(thickness.as_nanometres() / 3)
}

/// The largest usual size within the limit; nothing for slabs thinner than three stones.
pub fn largest_usual(thickness: Length) -> Option<Length> {
    USUAL
        .into_iter()
        .rev()
        .find(|size| *size <= limit(thickness))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_four_inch_slab_takes_one_inch_stone() {
        #[track_caller]
        fn case(thickness: &str, size: Option<&str>) {
            let length = |text: &str| text.parse::<Length>().unwrap();
            assert_eq!(largest_usual(length(thickness)), size.map(length));
        }
        case("4 in", Some("1 in")); // the limit is 1 1/3 in
        case("3 in", Some("1 in")); // exactly a third
        case("2.99 in", Some("3/4 in"));
        case("6 in", Some("2 in"));
        case("1 in", None);
    }

    /// Three stones of the size found never stand higher than the slab.
    #[test]
    fn three_stones_fit_under_the_surface() {
        for sixteenth in 18..200 {
            let thickness = Length::sixty_fourths(sixteenth * 4);
            let stone = largest_usual(thickness).unwrap();
            assert!(stone * 3 <= thickness, "{thickness}");
        }
    }
}
