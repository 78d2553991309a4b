//! Places on the way around a panel that joints should know of.

use super::ground::REACH;
use super::seam::edges;
use super::sheet::Piece;
use crate::geometry::point::Point;

/// A place on the way around a panel that its joints should know of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Mark {
    pub at: Point,
    pub kind: Kind,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Kind {
    /// An inside corner or a corner of an opening.
    Corner,
    /// Where the joint of a neighbour ends.
    End,
    Must,
    Wish,
}

/// Those of the marks that lie on the way around it.
pub(super) fn on(piece: &Piece, marks: &[Mark]) -> Vec<Mark> {
    marks
        .iter()
        .copied()
        .filter(|mark| is_on(piece, mark.at))
        .collect()
}

pub(super) fn is_on(piece: &Piece, place: Point) -> bool {
    let (low, high) = piece.bounds();
    low.x - REACH <= place.x
        && place.x <= high.x + REACH
        && low.y - REACH <= place.y
        && place.y <= high.y + REACH
        && piece
            .loops
            .iter()
            .flat_map(|ring| edges(ring))
            .any(|(edge, to)| edge.seam(to).is_near(place, REACH))
}
