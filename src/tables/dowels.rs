//! Dowels of pavements by the thickness of the slab.
//!
//! Source: UFC 3-260-02 (30 June 2001), Table 12-8, passage seen. It is for airfield
//! pavements; a patio or walk of 4 in lies outside what it was made for. Tables
//! for slabs of 5 to 8 in (ACI 360R and 330R) could not be read.

use super::{Read, Source};
use crate::values::Length;

pub const SOURCE: Source = Source::new(
    "UFC 3-260-02 (2001)",
    "Table 12-8, for airfield pavements",
    Read::Primary,
);

/// The thinnest slab for which the table is worth asking; common practice, no source.
pub const THINNEST: Length = Length::inches_whole(5);

/// Dowels across a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dowel {
    pub diameter: Length,
    /// At least so long.
    pub length: Length,
    /// At most so far apart.
    pub spacing: Length,
}

/// The least dowel for a slab of this thickness; `None` above 15 1/2 in.
pub fn least(thickness: Length) -> Option<Dowel> {
    const ROWS: [(i64, i64, i64, i64); 3] = [
        // Thickness up to, diameter (sixty-fourths), length and spacing (inches).
        (8 * 64 - 1, 48, 16, 12),
        (736, 64, 16, 12),
        (992, 64, 20, 15),
    ];
    ROWS.into_iter()
        .find(|(most, ..)| thickness <= Length::sixty_fourths(*most))
        .map(|(_, diameter, length, spacing)| Dowel {
            diameter: Length::sixty_fourths(diameter),
            length: Length::inches_whole(length),
            spacing: Length::inches_whole(spacing),
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rows_are_those_published() {
        #[track_caller]
        fn case(thickness: &str, dowel: Option<(&str, &str, &str)>) {
            let length = |text: &str| text.parse::<Length>().unwrap();
            let wanted = dowel.map(|(diameter, long, apart)| Dowel {
                diameter: length(diameter),
                length: length(long),
                spacing: length(apart),
            });
            assert_eq!(least(length(thickness)), wanted, "{thickness}");
        }
        case("5 in", Some(("3/4 in", "16 in", "12 in")));
        case("7.9 in", Some(("3/4 in", "16 in", "12 in")));
        case("8 in", Some(("1 in", "16 in", "12 in")));
        case("11.5 in", Some(("1 in", "16 in", "12 in")));
        case("12 in", Some(("1 in", "20 in", "15 in")));
        case("15.5 in", Some(("1 in", "20 in", "15 in")));
        case("16 in", None);
    }

    /// By another road: thicker slabs never ask for a lighter dowel.
    #[test]
    fn thicker_slabs_ask_for_no_less() {
        let rows: Vec<Dowel> = (5..=15)
            .filter_map(|inches| least(Length::inches_whole(inches)))
            .collect();
        assert!(rows.windows(2).all(|pair| {
            pair[0].diameter <= pair[1].diameter && pair[0].length <= pair[1].length
        }));
    }
}
