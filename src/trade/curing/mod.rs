//! How concrete hardens, and the day from which a slab may be used.
//!
//! Days are counted from the pour, temperatures are of the concrete, strength
//! is a percentage. `strength` is the file of the curve: floats live and die
//! there, through `libm`, and leave as whole days or two decimals. Everything errs late, nothing here is engineering, and
//! the supplier's or engineer's word comes first.

#[cfg(test)]
mod laws;
mod rules;
mod sealing;
pub mod season;
mod strength;
mod timeline;

pub use crate::input::book::Cement;
pub use rules::{CuringRules, Floors, Thresholds};
pub use sealing::{SEALS_FROM, is_sealer, is_too_cold, seal_after};
#[cfg(test)]
pub use timeline::timeline as steady;
pub use timeline::{Conditions, Milestone, Timeline, Use, by_season};
