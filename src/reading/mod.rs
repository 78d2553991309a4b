//! The `reading` floor.
