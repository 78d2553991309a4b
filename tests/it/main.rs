//! Tests of the whole program.

mod advice;
mod pdf;
mod reference_tables;
