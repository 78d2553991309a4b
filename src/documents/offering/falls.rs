//! Where water runs, in the customer's words.

use super::phrases::length;
use crate::geometry::Point;
use crate::input::job::{Fall, Slab, Takeoff};
use crate::input::phrases::{Done, FallTo};
use crate::values::Length;

/// Every fall of a slab that the plan does not say: of a part, to a drain, or beside another slope.
pub(super) fn said(slab: &Slab) -> Option<String> {
    let falls: Vec<String> = slab.falls.iter().map(one).collect();
    (!falls.is_empty()).then(|| falls.join(", "))
}

/// The level of each corner that was shot, as the plan shows it.
pub(super) fn levels(slab: &Slab) -> Vec<(Point, String)> {
    let corners = slab.levels.iter().flat_map(|levels| &levels.corners);
    let said = |level: Length| match level {
        Length::ZERO => "0".to_owned(),
        level => length(level),
    };
    corners.map(|one| (one.at, said(one.level))).collect()
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

/// `door sill 4 in above the patio, a step`; what is done about it where it is not flush.
pub(super) fn met(slab: &Slab) -> Option<String> {
    let met = slab.around.meets.iter().map(|(name, height)| {
        let above = height.value.above;
        let done = match height.value.done() {
            Done::Flush => ", flush",
            Done::Trim => ", the edge trimmed",
            Done::Step => ", a step",
            Done::Ramp => ", a ramp",
        };
        let way = if above < Length::ZERO {
            "below"
        } else {
            "above"
        };
        match above {
            Length::ZERO => format!("{} flush with the {}", name.value, slab.called),
            _ => format!(
                "{} {} {way} the {}{done}",
                name.value,
                length(above.abs()),
                slab.called
            ),
        }
    });
    let met: Vec<String> = met.collect();
    (!met.is_empty()).then(|| met.join("; "))
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
