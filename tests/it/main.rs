//! Tests of the whole program.

mod docs;
mod pdf;
mod quote;
mod reference_tables;
mod tidy;
