//! Air to order against frost, by the size of the stone.
//!
//! Source: ACI 318 Table 19.3.3.1, the same as ASTM C94 Table 1, from memory,
//! except 1 in moderate (4.5%, a Texas trade association, seen) and 3/4 in
//! severe (6%, seen on a study page). Delivered air may differ by 1.5. The most
//! under a steel trowel: ACI 302.1R-15 as quoted on two pages of the trade press.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::source::{Read, Source};
use crate::values::{Length, Percent};

pub const SOURCE: Source = Source::new("ACI 318", "Table 19.3.3.1", Read::Memory);

/// The most air, in all, under a surface that a steel trowel closes.
pub const MOST_UNDER_TROWEL: Percent = Percent::new(dec!(3));

pub const TROWEL_SOURCE: Source = Source::new("ACI 302.1R-15", "", Read::Secondary);

/// How far delivered air may be from the figure ordered, in percent of the concrete.
pub const TOLERANCE: Percent = Percent::new(dec!(1.5));

/// Frost the slab will meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Frost {
    /// Class F1: freezes, but seldom wet.
    Moderate,
    /// Classes F2 and F3: freezes while wet, with or without deicer.
    Severe,
}

/// Stone size in 64ths of an inch, then tenths of a percent: moderate, severe.
const TABLE: [(i64, i64, i64); 6] = [
    (24, 60, 75),
    (32, 55, 70),
    (48, 50, 60),
    (64, 45, 60),
    (96, 45, 55),
    (128, 40, 50),
];

/// Air to order for the largest stone of the mix.
///
/// A size between two rows takes the smaller stone's row, which asks for more
/// air; over 2 in there is no row.
pub fn air(largest_stone: Length, frost: Frost) -> Option<Percent> {
    TABLE
        .into_iter()
        .rev()
        .find(|row| Length::sixty_fourths(row.0) <= largest_stone)
        .or(Some(TABLE[0]))
        .filter(|_| largest_stone <= Length::sixty_fourths(128))
        .map(|(_, moderate, severe)| match frost {
            Frost::Moderate => moderate,
            Frost::Severe => severe,
        })
        .map(|tenths| Percent::new(Decimal::new(tenths, 1)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tables::aggregate::USUAL;

    /// By another road: the ranges of UFGS 03311 (seen) hold every figure.
    #[test]
    fn lies_within_the_military_ranges() {
        let ranges = [
            (dec!(6), dec!(10)),
            (dec!(5), dec!(9)),
            (dec!(4), dec!(8)),
            (dec!(3.5), dec!(6.5)),
            (dec!(3), dec!(6)),
            (dec!(2.5), dec!(5.5)),
        ];
        for (size, (low, high)) in USUAL.into_iter().zip(ranges) {
            for frost in [Frost::Moderate, Frost::Severe] {
                let air = air(size, frost).unwrap().number();
                assert!(low <= air && air <= high, "{size} {frost:?}: {air}");
            }
        }
    }

    #[test]
    fn smaller_stone_and_harder_frost_never_ask_for_less() {
        for pair in USUAL.windows(2) {
            for frost in [Frost::Moderate, Frost::Severe] {
                assert!(air(pair[1], frost) <= air(pair[0], frost));
            }
        }
        for size in USUAL {
            assert!(air(size, Frost::Moderate) < air(size, Frost::Severe));
        }
    }

    #[test]
    fn one_inch_stone_in_moderate_frost_is_three_to_six() {
        // Worked on a trade association's page: 3 to 6%.
        let air = air(Length::inches_whole(1), Frost::Moderate).unwrap();
        assert_eq!(air.number() - TOLERANCE.number(), dec!(3));
        assert_eq!(air.number() + TOLERANCE.number(), dec!(6));
    }

    #[test]
    fn between_two_sizes_the_smaller_stone_counts() {
        let size = Length::sixty_fourths(56);
        assert_eq!(
            air(size, Frost::Severe),
            Some(Percent::new(Decimal::new(60, 1)))
        );
        let size = Length::sixty_fourths(40);
        assert_eq!(
            air(size, Frost::Severe),
            Some(Percent::new(Decimal::new(70, 1)))
        );
        assert_eq!(air(Length::sixty_fourths(129), Frost::Severe), None);
        assert_eq!(
            air(Length::sixty_fourths(16), Frost::Severe),
            Some(Percent::new(dec!(7.5)))
        );
    }
}
