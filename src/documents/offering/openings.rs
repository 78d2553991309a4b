//! What is left open in a slab, as the customer reads it.

use super::phrases::{list, size_of};
use crate::geometry::Outline;
use crate::input::job::{Opening, Slab};

/// More than these are counted, not named.
const NAMED: usize = 3;

/// ` around the tree well (3 × 3 ft)`, or nothing.
pub(super) fn around(slab: &Slab) -> String {
    let names: Vec<String> = each(slab)
        .filter(|(opening, _)| !opening.of_ring)
        .map(|(opening, hole)| format!("the {} ({})", opening.name.value, size(opening, hole)))
        .collect();
    match names.len() {
        0 => String::new(),
        1..=NAMED => format!(" around {}", list(&names)),
        many => format!(" around {many} openings (as drawn)"),
    }
}

pub(super) fn each(slab: &Slab) -> impl Iterator<Item = (&Opening, &Outline)> {
    slab.openings.iter().zip(slab.outline.holes())
}

pub(super) fn size(opening: &Opening, hole: &Outline) -> String {
    size_of(opening.size.as_ref().map(|size| size.value), hole)
}
