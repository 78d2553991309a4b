//! How much a surface may or must fall, and how far siding stays above it.
//!
//! 1/4 in per ft is 1:48, which is 2.0833...%: the least for a patio at a house
//! (2%) and the most across a public walk leave less than a tenth of a percent
//! between them, so nothing here is rounded. Often misprinted as 2%; a city's
//! manual prints both as one rule.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{Read, Source};
use crate::values::Length;

/// Across a public walk, no more than 1 in this.
pub const PUBLIC_CROSS_RUN: Decimal = dec!(48);
pub const PUBLIC_CROSS: Source = Source::new("2010 ADA Standards", "403.3", Read::Primary);

/// Steeper than 1 in this along the way, a public walk is a ramp.
pub const WALK_RUN: Decimal = dec!(20);
/// A ramp rises no more than 1 in this.
pub const RAMP_RUN: Decimal = dec!(12);
pub const RAMP: Source = Source::new("2010 ADA Standards", "405.2", Read::Primary);

/// Outdoor flatwork falls at least this much in each foot.
pub const LEAST_IN_A_FOOT: Length = Length::sixty_fourths(8);
pub const LEAST: Source = Source::new(
    "a ready-mix association and a producer",
    "",
    Read::Secondary,
);

/// Percent, on hard surfaces within 10 ft of a house, away from it.
pub const AWAY_FROM_HOUSE: Decimal = dec!(2);
pub const AWAY: Source = Source::new("IRC 2006", "R401.3", Read::Secondary);

/// From a paved surface up to siding.
pub const SIDING_ABOVE_PAVING: Length = Length::inches_whole(2);
/// Plaster siding; a trade magazine of January 2008 tells of it.
pub const PLASTER: Source = Source::new("IRC", "R703.6.2.1, for plaster", Read::Secondary);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_inch_in_a_foot_is_the_most_across_a_public_walk() {
        let quarter = Length::sixty_fourths(16);
        assert_eq!(quarter.inches() * PUBLIC_CROSS_RUN, dec!(12));
        assert!(AWAY_FROM_HOUSE * PUBLIC_CROSS_RUN < dec!(100));
        assert!(dec!(100) < dec!(2.084) * PUBLIC_CROSS_RUN);
    }

    #[test]
    fn the_least_fall_is_half_of_the_most() {
        assert_eq!(LEAST_IN_A_FOOT * 2, Length::sixty_fourths(16));
    }
}
