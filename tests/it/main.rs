//! Tests of the whole program.

mod pdf;
mod properties;
mod reference;
mod reference_tables;
mod support;
