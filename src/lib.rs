//! From tape measure to last payment for small concrete flatwork crews.
//!
//! The floors stand in reading order; each uses only those above it
//! (`tests/it/tidy.rs` holds the list and fails when the code breaks it). They are private, so
//! that the compiler tells what nothing calls.

mod advice;
mod costing;
mod documents;
mod geometry;
mod input;
mod office;
mod outside;
mod press;
mod reading;
mod tables;
mod trade;
mod values;

pub use outside::cli::run;

/// Every floor, opened for the tests and measurements of this package.
#[cfg(feature = "inside")]
pub mod inside {
    macro_rules! opened {
        ($($floor:ident)*) => { $(pub mod $floor { pub use crate::$floor::*; })* };
    }

    opened!(advice costing documents geometry input office outside press reading tables trade values);
}
