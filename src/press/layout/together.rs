//! What stays together, and what may be parted where a page ends.

use super::piece::{Body, Bond, Piece, end_of};
use super::style::grid;
use std::collections::VecDeque;

/// How many pieces at the front must stay together.
pub(super) fn cluster(flow: &VecDeque<Piece>) -> usize {
    let kept = flow
        .iter()
        .take_while(|piece| piece.keep_next && !matches!(piece.body, Body::NewPage))
        .count();
    (kept + 1).min(flow.len())
}

/// Whether a whole that does not fit from `y` down is divided there.
pub(super) fn divisible(piece: &Piece, bond: Bond, y: f32) -> bool {
    let height = end_of([piece], grid::UNDER_HEAD, true) - grid::UNDER_HEAD;
    let page = grid::BOTTOM - grid::UNDER_HEAD;
    match bond {
        Bond::Firm => page < height,
        Bond::Loose => page < height || (page / 2.0 < height && page / 3.0 < grid::BOTTOM - y),
    }
}

/// Whether every column can place something from `y` down.
pub(super) fn can_start(body: &Body, y: f32) -> bool {
    match body {
        Body::Columns(columns) => columns.iter().all(|column| starts(column, y)),
        Body::Flows(flows) => starts(&flows.pieces, y),
        Body::Solid(_) | Body::Whole(..) | Body::NewPage | Body::Fit { .. } => false,
    }
}

fn starts(pieces: &[Piece], y: f32) -> bool {
    let kept = pieces.iter().take_while(|piece| piece.keep_next).count();
    let together = (kept + 1).min(pieces.len());
    if end_of(pieces.iter().take(together), y, true) <= grid::BOTTOM {
        return true;
    }
    let Some(last) = together.checked_sub(1).and_then(|at| pieces.get(at)) else {
        return true;
    };
    let before = end_of(pieces.iter().take(together - 1), y, true);
    let start = last.start(before, together == 1);
    match &last.body {
        Body::Whole(parts, bond) => divisible(last, *bond, start) && starts(parts, start),
        Body::Fit { versions, .. } => versions
            .last()
            .is_none_or(|version| starts(&version.pieces, start)),
        Body::NewPage => true,
        Body::Columns(_) | Body::Flows(_) => can_start(&last.body, start),
        Body::Solid(_) => false,
    }
}
