//! Is a slab held along two edges at a right angle?

use super::{Case, DECIDES};
use crate::geometry::Compass;
use crate::input::job::{EdgePart, Pin, Slab};
use crate::reading::Problem;
use crate::tables::Source;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let held = slabs.filter_map(|slab| how(slab).map(|how| (slab, how)));
    let answers = held.map(|(slab, how)| {
        let message = format!(
            "`{}` is {how} along two edges at a right angle, so it cannot shrink freely",
            slab.key
        );
        Problem::new("pinned-both-ways", message)
            .at(slab.place)
            .help(format!(
                "hold it along one edge, or along edges that face each other, and give the other a strip; else look for a crack from the corner ({}); {DECIDES}",
                Source::PRACTICE
            ))
    });
    answers.collect()
}

/// The word for what holds it; ties hold more than dowels.
fn how(slab: &Slab) -> Option<&'static str> {
    let of = |wanted: &[Pin]| {
        let pinned = slab.edges.iter().filter(|part| {
            let pin = part.kind.pin();
            pin.is_some_and(|pin| wanted.contains(&pin))
        });
        let level: Vec<bool> = pinned.filter_map(|part| level(slab, part)).collect();
        level.contains(&true) && level.contains(&false)
    };
    if of(&[Pin::Ties]) {
        Some("tied")
    } else if of(&[Pin::Dowels]) {
        // A dowel slides along itself only: those of one edge stop what those of the other allow.
        Some("doweled")
    } else if of(&[Pin::Ties, Pin::Dowels]) {
        Some("tied and doweled")
    } else {
        None
    }
}

/// Whether the edge runs east-west; `None` for one that is slanted.
fn level(slab: &Slab, part: &EdgePart) -> Option<bool> {
    let looks = slab.outline.sides()[part.side].facing()?;
    Some(matches!(looks, Compass::North | Compass::South))
}
