//! The `geometry` floor.
