//! Tests of the whole program.

mod pdf;
