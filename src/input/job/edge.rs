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
    pub meets: Meets,
}

impl EdgePart {
    /// A form stands here.
    pub const fn has_form(&self) -> bool {
        self.kind.has_form() || matches!(self.meets, Meets::Face(_))
    }
}

/// What another slab that touches here adds to the edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Meets {
    Nothing,
    /// The form between two pours holds this depth of the slab beyond.
    Depth(Length),
    /// The slab beyond is lower: a form of this height holds the face over it, whatever else
    /// stands here; what lies below the face is cast against the slab beyond, or it against this.
    Face(Length),
    /// Both are one pour: a control joint runs here, and this slab counts it.
    ControlJoint,
}
