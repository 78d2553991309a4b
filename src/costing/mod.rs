//! The `costing` floor.
