//! The `trade` floor.
