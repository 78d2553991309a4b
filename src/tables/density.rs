//! What things weigh: concrete in place, and materials loose or compacted.
//!
//! Sources: 150 and 145 lb/cu ft for concrete are handbook custom (from
//! memory). Loose materials from `CalRecycle`'s conversion table for building
//! waste, passage seen. A density belongs to one state; loose stone and
//! compacted stone are two entries, never one.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::yard::{CUBIC_FEET_IN_A_YARD, INCHES_IN_A_FOOT};
use crate::values::{Amount, Length, Unit};

/// A material in one state.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Material {
    /// Reinforced concrete of normal weight, in place.
    ReinforcedConcrete,
    /// Plain concrete of normal weight, in place.
    PlainConcrete,
    /// Broken concrete or asphalt, loose in a bin.
    BrokenConcrete,
    /// Gravel or crushed stone, loose and dry; wet it weighs 20% more.
    LooseStone,
    /// Sand, loose and dry; damp it weighs 20% more.
    LooseSand,
    /// Earth, loose and dry.
    LooseEarth,
    /// Earth as dug, wet.
    WetEarth,
}

impl Material {
    pub const ALL: [Self; 7] = [
        Self::ReinforcedConcrete,
        Self::PlainConcrete,
        Self::BrokenConcrete,
        Self::LooseStone,
        Self::LooseSand,
        Self::LooseEarth,
        Self::WetEarth,
    ];

    /// Pounds to the cubic yard, in this state.
    pub fn pounds_per_cubic_yard(self) -> Decimal {
        match self {
            Self::ReinforcedConcrete => dec!(150) * CUBIC_FEET_IN_A_YARD,
            Self::PlainConcrete => dec!(145) * CUBIC_FEET_IN_A_YARD,
            Self::BrokenConcrete | Self::LooseSand => dec!(2400),
            Self::LooseStone => dec!(2600),
            Self::LooseEarth => dec!(2100),
            Self::WetEarth => dec!(3000),
        }
    }

    /// Weight of a volume, in tons of 2,000 lb.
    pub fn tons(self, cubic_yards: Decimal) -> Amount {
        Amount::new(
            cubic_yards * self.pounds_per_cubic_yard() / dec!(2000),
            Unit::Ton,
        )
    }

    /// Pounds to the square foot of a layer.
    pub fn pounds_per_square_foot(self, thickness: Length) -> Decimal {
        self.pounds_per_cubic_yard() * thickness.inches()
            / (CUBIC_FEET_IN_A_YARD * INCHES_IN_A_FOOT)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values::rounding::to_places;

    /// By another road: the kilogram (1 lb/cu yd is 0.593276 kg/m³); every loose
    /// material must lie between 1.2 and 1.8 t/m³, concrete between 2.2 and 2.45.
    #[test]
    fn metric_weights_are_believable() {
        for material in Material::ALL {
            let tonnes = material.pounds_per_cubic_yard() * dec!(0.000593276);
            let (low, high) = match material {
                Material::ReinforcedConcrete | Material::PlainConcrete => (dec!(2.2), dec!(2.45)),
                _ => (dec!(1.2), dec!(1.8)),
            };
            assert!(low < tonnes && tonnes < high, "{material:?}: {tonnes}");
        }
    }

    #[test]
    fn an_inch_of_concrete_weighs_twelve_and_a_half_pounds() {
        let four = Length::inches_whole(4);
        assert_eq!(
            Material::ReinforcedConcrete.pounds_per_square_foot(four),
            dec!(50)
        );
        let plain = Material::PlainConcrete.pounds_per_square_foot(four);
        assert_eq!(to_places(plain, 2), dec!(48.33));
    }

    #[test]
    fn tons_are_of_two_thousand_pounds() {
        assert_eq!(Material::LooseStone.tons(dec!(10)).value, dec!(13));
    }
}
