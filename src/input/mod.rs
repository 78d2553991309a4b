//! The `input` floor.
