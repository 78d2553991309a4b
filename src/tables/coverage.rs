//! How far curing compound goes, and what it does to a later sealer.
//!
//! Sources: UFGS 03372 section 3.5.3.3, passage seen: two coats at right angles,
//! each not over 400 sq ft to the gallon, 200 together. ASTM C309 tests at the
//! same 200 (from memory). That a compound has to come off before a sealer was
//! read in a trade presentation that quotes a maker of both.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::source::{Read, Source};
use crate::values::{Amount, Area, Unit};

/// A curing compound keeps a later sealer or coating from holding, unless it is removed.
pub const UNDER_SEALER: Source = Source::new(
    "a maker of both, quoted by the trade press",
    "",
    Read::Secondary,
);

/// Square feet that one gallon of curing compound covers, all coats together.
pub const CURING_COMPOUND: Decimal = dec!(200);

/// Square feet that one gallon covers in each of two coats.
pub const CURING_COMPOUND_A_COAT: Decimal = dec!(400);

/// Gallons for an area, before they are bought in whole cans.
pub fn curing_compound(area: Area) -> Amount {
    Amount::new(area.square_feet() / CURING_COMPOUND, Unit::Gallon)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values::Length;

    #[test]
    fn two_coats_at_four_hundred_are_one_at_two_hundred() {
        let area = Length::feet_whole(36) * Length::feet_whole(20);
        let coats = dec!(2) * area.square_feet() / CURING_COMPOUND_A_COAT;
        assert_eq!(curing_compound(area).value, coats);
        assert_eq!(coats, dec!(3.6)); // 720 sq ft
    }
}
