//! Tests of the whole program.

mod pdf;
mod reference_tables;
