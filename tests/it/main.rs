//! Tests of the whole program.

mod reference_tables;
