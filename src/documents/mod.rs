//! The `documents` floor.
