//! How concrete hardens, and the day from which a slab may be used.
//!
//! Days are counted from the pour, temperatures are of the concrete, strength
//! is a percentage. `strength` and `equivalent_age` are the named curve files:
//! floats live and die there, through `libm`, and leave as whole days, whole
//! psi or two decimals. Everything errs late, nothing here is engineering, and
//! the supplier's or engineer's word comes first.

pub mod equivalent_age;
#[cfg(test)]
mod laws;
pub mod rules;
mod sealing;
pub mod strength;
pub mod timeline;

pub use crate::input::book::Cement;
pub use rules::{Floors, Rules, Thresholds};
pub use sealing::seal_after;
pub use timeline::{Conditions, Milestone, Moment, Timeline, Use, timeline};
