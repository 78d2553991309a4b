//! The `trade` floor.

pub mod curing;
