//! Published tables and rules, one a file, each with its source.
//!
//! Everything here is decimal or whole nanometres, and nothing here decides
//! anything: a rule says what was published, a setting says what the owner
//! does. `SOURCES.md` lists every clause used and how far it was really read;
//! where a standard was not opened, the table says so and nobody may quote it
//! as if it had been.

pub mod aggregate;
pub mod air;
pub mod bars;
pub mod box_loads;
pub mod cover;
pub mod dowels;
pub mod holidays;
pub mod joints;
pub mod laps;
pub mod slopes;
pub mod source;
pub mod steps;
pub mod strength;
pub mod thickness;
pub mod ways;
pub mod weather;
pub mod yard;

pub use source::{Read, Source};
