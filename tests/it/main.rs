//! Tests of the whole program.

mod golden;
mod pdf;
mod reference_tables;
