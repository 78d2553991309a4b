//! Where water runs, in the customer's words.

use super::phrases::length;
use crate::input::job::{Fall, Slab, Takeoff};
use crate::input::phrases::FallTo;

/// Every fall of a slab that the plan does not say: of a part, to a drain, or beside another slope.
pub(super) fn said(slab: &Slab) -> Option<String> {
    let falls: Vec<String> = slab.falls.iter().map(one).collect();
    (!falls.is_empty()).then(|| falls.join(", "))
}

fn one(fall: &Fall) -> String {
    let steep = format!("{} per ft", length(fall.rise.value));
    let to = match &fall.to {
        FallTo::Unsaid => steep,
        FallTo::Side(side) => format!("{steep} to the {}", side.name()),
        FallTo::Drain(drain) => format!("{steep} to the {drain}"),
    };
    match &fall.part {
        Some(part) => format!("{part} {to}"),
        None => to,
    }
}

/// `6 in lower than the patio`.
pub(super) fn lower(takeoff: &Takeoff, slab: &Slab) -> Option<String> {
    let (drop, than) = slab.lower.as_ref()?;
    let mut slabs = takeoff.slabs.iter();
    let called = slabs.find(|one| one.key == *than).map(|one| &one.called)?;
    Some(format!(
        "{} {} lower than the {called}",
        slab.called,
        length(drop.value)
    ))
}

/// Whether the plan, with one slope for all and arrows to sides, says too little.
pub(super) fn are_to_be_told(slabs: &[std::sync::Arc<Slab>]) -> bool {
    let mut rises = slabs.iter().flat_map(|slab| &slab.falls);
    let first = rises.next().map(|fall| fall.rise.value);
    let differ = rises.any(|fall| Some(fall.rise.value) != first);
    let of_part = |slab: &Slab| {
        let to_drain = |fall: &Fall| matches!(fall.to, FallTo::Drain(_));
        1 < slab.falls.len()
            || slab
                .falls
                .iter()
                .any(|fall| fall.part.is_some() || to_drain(fall))
    };
    differ || slabs.iter().any(|slab| of_part(slab))
}
