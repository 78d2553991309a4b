//! What may stand at an edge, and what may cross it.

/// What crosses an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Crossed {
    Nothing,
    /// Dowels that slide; a strip stays between.
    Dowels,
    /// Bars that hold; no strip is between.
    Ties,
}

/// What stands at an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EdgeMark {
    /// A form, nothing beyond it.
    Open,
    /// The house wall, behind an isolation strip.
    House,
    /// Concrete that stays, behind an isolation strip.
    Existing,
    /// A curb, behind an isolation strip.
    Curb,
    /// Placed in one go with its neighbour.
    Joined,
    /// A construction joint between two placements.
    Bulkhead,
    /// An isolation strip against another new slab, a post or a step.
    Isolated,
}
