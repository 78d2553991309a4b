//! Areas in whole square nanometres, exact until they become a quantity.

use rust_decimal::Decimal;

/// An area: whole square nanometres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Area(i128);

impl Area {
    pub const fn square_nanometres(area: i128) -> Self {
        Self(area)
    }

    /// Square feet; one foot is 0.3048 m exactly.
    pub fn square_feet(self) -> Decimal {
        let square_foot = Decimal::from(304_800_000_i64 * 304_800_000_i64);
        Decimal::from_i128_with_scale(self.0, 0) / square_foot
    }
}

super::whole_number_inside!(Area);
