//! How much more room a material takes once it is broken out, and loose stone before it is compacted.
//!
//! Sources: the swell of broken concrete is computed from two densities of
//! `density.rs`. The range for stone is from memory and is the owner's setting:
//! published rules for a yard of base span 1.28 to 2.2 ton.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::density::Material;

/// Loose volume over solid volume of broken concrete: 4,050 / 2,400, about 1.69.
///
/// Field handbooks say 1.5 to 1.7 (from memory). Weight limits, not volume,
/// usually decide how many bins there are.
pub fn broken_concrete() -> Decimal {
    Material::ReinforcedConcrete.pounds_per_cubic_yard()
        / Material::BrokenConcrete.pounds_per_cubic_yard()
}

/// Loose volume to buy for each compacted volume of base, unless the owner says
/// otherwise; usual figures run from 1.15 to 1.35 (from memory).
pub const LOOSE_FOR_COMPACTED: Decimal = dec!(1.25);

/// Swell in percent: loose less in place, over in place.
pub fn swell_percent(in_place: Decimal, loose: Decimal) -> Option<Decimal> {
    ((loose - in_place) * Decimal::ONE_HUNDRED).checked_div(in_place)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values::rounding::to_places;

    #[test]
    fn broken_concrete_keeps_its_weight() {
        let solid = dec!(8);
        let loose = solid * broken_concrete();
        assert_eq!(
            Material::BrokenConcrete.tons(loose).value,
            Material::ReinforcedConcrete.tons(solid).value
        );
        assert_eq!(to_places(broken_concrete(), 2), dec!(1.69));
    }

    #[test]
    fn ten_yards_become_thirteen() {
        // A published example: swell 30%.
        assert_eq!(swell_percent(dec!(10), dec!(13)), Some(dec!(30)));
        assert_eq!(swell_percent(dec!(0), dec!(13)), None);
    }

    #[test]
    fn bought_stone_compacts_to_a_believable_weight() {
        // Compacted base runs near 1.5 to 2 ton a yard.
        let tons = Material::LooseStone.tons(LOOSE_FOR_COMPACTED).value;
        assert!(dec!(1.5) < tons && tons < dec!(2), "{tons}");
    }
}
