//! Tests of the whole program.

mod pdf;
mod quote;
mod reference_tables;
mod tidy;
