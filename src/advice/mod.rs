//! The `advice` floor.
