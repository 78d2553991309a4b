//! Loads of boxes set in the ground, by the tiers of their standard.
//!
//! Source: ANSI/SCTE 77, table of 2013 in a maker's catalogue; edition 2023 is
//! current. Every tier is for traffic that strays over it; what is driven over
//! on purpose is left to AASHTO (the standard's scope, passage seen).

use super::{Read, Source};

/// Tier, design load and test load in pounds.
pub const TIERS: [(u32, u32, u32); 4] = [
    (5, 5_000, 7_500),
    (8, 8_000, 12_000),
    (15, 15_000, 22_500),
    (22, 22_500, 33_750),
];

/// A public walk asks for this design load at least.
pub const PUBLIC_WALK: u32 = TIERS[1].1;

pub const TABLE: Source = Source::new("ANSI/SCTE 77", "table of 2013", Read::Secondary);
pub const SCOPE: Source = Source::new("ANSI/SCTE 77 (2023)", "scope", Read::Primary);

#[cfg(test)]
mod tests {
    use super::*;

    /// The standard tests at one and a half times the design load.
    #[test]
    fn test_loads_agree_with_design_loads() {
        for (tier, design, test) in TIERS {
            assert_eq!(test * 2, design * 3, "tier {tier}");
        }
    }

    /// A catalogue says "tier times 1,000 lb", which its own table contradicts.
    #[test]
    fn the_highest_tier_is_not_its_number_times_a_thousand() {
        let (tier, design, _) = TIERS[3];
        assert_ne!(tier * 1_000, design);
    }
}
