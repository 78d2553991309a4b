//! What is left open in a slab, as the customer reads and sees it.

use super::phrases::{capital, list, size_of};
use super::plan::kind;
use crate::documents::figures::plan::{self, OpeningView};
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

pub(super) fn drawn(slab: &Slab) -> Vec<OpeningView> {
    each(slab)
        .map(|(opening, hole)| {
            let first = opening.edges.first().map(|part| part.kind);
            let one_kind = opening.edges.iter().all(|part| Some(part.kind) == first);
            OpeningView {
                name: if opening.of_ring {
                    "Open".to_owned()
                } else {
                    capital(&opening.name.value)
                },
                size: size(opening, hole),
                outline: hole.clone(),
                kind: first
                    .filter(|_| one_kind)
                    .map_or(plan::EdgeKind::Open, kind),
            }
        })
        .collect()
}

fn each(slab: &Slab) -> impl Iterator<Item = (&Opening, &Outline)> {
    slab.openings.iter().zip(slab.outline.holes())
}

fn size(opening: &Opening, hole: &Outline) -> String {
    size_of(opening.size.as_ref().map(|size| size.value), hole)
}
