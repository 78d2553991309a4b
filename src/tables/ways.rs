//! How much longer placing takes over a long way, by method: common practice, no source.
//!
//! A production rate is for the usual way. Worked out from what a barrow (3 cu ft) and a buggy (16 cu ft)
//! carry and how fast they are walked, and rounded down, since the crew at the slab works meanwhile; an
//! owner who has timed it writes his own.

use rust_decimal::Decimal;

use crate::values::{Length, Percent};

/// So many percent more for each stretch past the usual way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Longer {
    pub more: Percent,
    pub each: Length,
    pub past: Length,
}

const fn longer(percent: u32, each: i64, past: i64) -> Longer {
    Longer {
        more: Percent::new(Decimal::from_parts(percent, 0, 0, false, 0)),
        each: Length::feet_whole(each),
        past: Length::feet_whole(past),
    }
}

/// Past the reach of the chute concrete is dragged.
pub const CHUTE: Longer = longer(20, 10, 20);
pub const WHEELBARROW: Longer = longer(10, 50, 50);
pub const BUGGY: Longer = longer(5, 100, 100);
/// The hose is dragged and coupled.
pub const PUMP: Longer = longer(5, 100, 100);
