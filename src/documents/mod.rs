//! The `documents` floor.

pub mod figures;
