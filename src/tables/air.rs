//! Air to order against frost, by the size of the stone.
//!
//! Common practice: ACI 318 Table 19.3.3.1, the same as ASTM C94 Table 1, could not be read,
//! except 3/4 in (6%, seen on a study page). Delivered air may differ by 1.5. The most
//! under a steel trowel: ACI 302.1R-15 as quoted on two pages of the trade press.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::source::{Read, Source};
use crate::values::{Length, Percent};

pub const SOURCE: Source = Source::PRACTICE;

/// The most air, in all, under a surface that a steel trowel closes.
pub const MOST_UNDER_TROWEL: Percent = Percent::new(dec!(3));

pub const TROWEL_SOURCE: Source = Source::new("ACI 302.1R-15", "", Read::Secondary);

/// Stone size in 64ths of an inch, and tenths of a percent in classes F2 and F3.
const TABLE: [(i64, i64); 6] = [(24, 75), (32, 70), (48, 60), (64, 60), (96, 55), (128, 50)];

/// Air to order for the largest stone of a mix that freezes while it is wet (classes F2 and
/// F3, with or without deicer).
///
/// A size between two rows takes the smaller stone's row, which asks for more
/// air; over 2 in there is no row.
pub fn air(largest_stone: Length) -> Option<Percent> {
    TABLE
        .into_iter()
        .rev()
        .find(|row| Length::sixty_fourths(row.0) <= largest_stone)
        .or(Some(TABLE[0]))
        .filter(|_| largest_stone <= Length::sixty_fourths(128))
        .map(|(_, tenths)| Percent::new(Decimal::new(tenths, 1)))
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
            let air = air(size).unwrap().number();
            assert!(low <= air && air <= high, "{size}: {air}");
        }
    }

    #[test]
    fn smaller_stone_never_asks_for_less() {
        for pair in USUAL.windows(2) {
            assert!(air(pair[1]) <= air(pair[0]));
        }
    }

    #[test]
    fn between_two_sizes_the_smaller_stone_counts() {
        let asked = |size| air(Length::sixty_fourths(size)).map(Percent::number);
        assert_eq!(asked(56), Some(dec!(6.0)));
        assert_eq!(asked(40), Some(dec!(7.0)));
        assert_eq!(asked(129), None);
        assert_eq!(asked(16), Some(dec!(7.5)));
    }
}
