//! Pure arithmetic without prices: what is measured, what is bought, how long it takes.
//!
//! Every rule is one formula with its source beside it; nothing here knows a
//! price, and nothing here can fail.

mod also;
pub mod calendar;
pub mod crew;
pub mod curing;
mod cut;
pub mod measure;
pub mod needs;
pub mod order;
pub mod parted;
pub mod sets;
pub mod tally;
pub mod term;
pub mod working;

pub use working::{Quantity, Working};
