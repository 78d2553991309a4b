//! The `values` floor.

/// Why a piece of text is not a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    pub code: &'static str,
    pub message: String,
    pub help: String,
}
