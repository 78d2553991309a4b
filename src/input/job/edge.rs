//! A stretch of an edge, and what stands along it.

use crate::input::phrases::EdgeKind;
use crate::values::Length;

/// A stretch of one side of the outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EdgePart {
    /// Number of the side in `Outline::sides`.
    pub side: usize,
    pub kind: EdgeKind,
    /// Along the side from its first corner; whole sides when `None`.
    pub stretch: Option<(Length, Length)>,
}
