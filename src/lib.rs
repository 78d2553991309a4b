//! From tape measure to last payment for small concrete flatwork crews.
//!
//! The floors stand in reading order; each uses only those above it
//! (`tests/it/tidy.rs` holds the list and fails when the code breaks it).

pub mod advice;
pub mod costing;
pub mod documents;
pub mod geometry;
pub mod input;
pub mod office;
pub mod outside;
pub mod press;
pub mod reading;
pub mod tables;
pub mod trade;
pub mod values;
