//! Tests of the whole program.

mod pdf;
mod reference;
mod reference_tables;
mod support;
