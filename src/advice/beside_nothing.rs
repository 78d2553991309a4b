//! Does something lie where the takeoff says that another pour, or old concrete with joints, goes on?

use std::collections::BTreeSet;

use super::Case;
use crate::input::job::{EdgeKind, Meets, Slab};
use crate::reading::Problem;
use crate::tables::Source;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    slabs
        .flat_map(|slab| bulkheads(slab).into_iter().chain(joints(slab)))
        .collect()
}

/// Bars or a key at the end of a pour, for a slab that this job does not have.
fn bulkheads(slab: &Slab) -> Option<Problem> {
    // Along the edge of one that lies lower a form stands, and the neighbor says what it meets.
    if slab.lower.is_some() {
        return None;
    }
    let met = slab
        .edges
        .iter()
        .filter(|part| part.meets != Meets::Nothing);
    let met: BTreeSet<usize> = met.map(|part| part.side).collect();
    let part = slab.edges.iter().find(|part| {
        let goes_on = part.kind.pin().is_some() || part.kind == EdgeKind::KeyedBulkhead;
        part.kind.is_bulkhead() && goes_on && !met.contains(&part.side)
    })?;
    let message = format!(
        "an edge of `{}` is a `{}`, and no slab of this job lies beside it",
        slab.key,
        part.kind.name()
    );
    Some(Problem::new("bulkhead-alone", message).at(slab.place).help(format!(
        "place the slab that goes on there with `beside`, in a later pour; where one comes in another job, leave it; where concrete stays, write `doweled existing concrete` ({})",
        Source::PRACTICE
    )))
}

/// A joint that is met where the slab ends in the open.
fn joints(slab: &Slab) -> Option<Problem> {
    let is_open = |side: usize| {
        let mut parts = slab.edges.iter().filter(|part| part.side == side);
        parts.all(|part| part.kind == EdgeKind::Open && part.meets == Meets::Nothing)
    };
    let place = slab.matched.iter().find(|at| {
        let all: Vec<usize> = slab.outline.sides_at(at.value).collect();
        !all.is_empty() && all.into_iter().all(is_open)
    })?;
    let message = format!(
        "a joint of `{}` is to meet one of what stays, and its edge there is open",
        slab.key
    );
    Some(Problem::new("match-in-the-open", message).at(place.place).help(
        "say what stands there, for example `edges: {south: existing concrete}`; else draw the joint with `joints at`",
    ))
}
