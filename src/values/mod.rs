//! The `values` floor.
