//! Lines that are not sides of an outline: joints, and the sides of the panels between them.

use super::point::Point;
use crate::values::Length;

/// A joint, or a side of a panel: straight, or an arc of at most half a circle.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Line {
    pub from: Point,
    pub to: Point,
    /// Rise of the arc at its middle: positive to the right of the way, as sides of an outline have it.
    pub bulge: Length,
}
