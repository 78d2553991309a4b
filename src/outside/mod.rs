//! The `outside` floor.
pub mod cli;
