//! The `tables` floor.
