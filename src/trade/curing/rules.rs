//! What the owner may set about curing: least days, shares of strength, the lag of blended cement.

use rust_decimal_macros::dec;

use crate::values::Percent;

/// The owner's least whole days, whatever the curve says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Floors {
    pub walk: u32,
    pub car: u32,
    pub heavy: u32,
    pub seal: u32,
}

impl Default for Floors {
    /// Walk after 24 h and cars after a week are on producers' sheets, as restated
    /// elsewhere; the other two are common practice, no source.
    fn default() -> Self {
        Self {
            walk: 1,
            car: 7,
            heavy: 14,
            seal: 28,
        }
    }
}

/// The share of the ordered strength each use waits for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Thresholds {
    pub walk: Percent,
    pub car: Percent,
    pub heavy: Percent,
}

impl Default for Thresholds {
    /// Common practice, no source.
    fn default() -> Self {
        Self {
            walk: Percent::new(dec!(25)),
            car: Percent::new(dec!(75)),
            heavy: Percent::new(dec!(95)),
        }
    }
}

/// What the owner may set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CuringRules {
    pub floors: Floors,
    pub thresholds: Thresholds,
    /// How much longer blended cement takes than ordinary.
    pub blended_lag: Percent,
}

impl CuringRules {
    /// The lag as it is counted: never less than nothing, never more than three times as long.
    pub fn counted_lag(&self) -> Percent {
        Percent::new(self.blended_lag.number().clamp(dec!(0), dec!(200)))
    }
}

impl Default for CuringRules {
    /// The lag of 20% is common practice, no source.
    fn default() -> Self {
        Self {
            floors: Floors::default(),
            thresholds: Thresholds::default(),
            blended_lag: Percent::new(dec!(20)),
        }
    }
}
