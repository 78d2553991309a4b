//! Slabs that would lie where another lies, or where a house stands.

use super::positions::{Contact, reference};
use super::shared;
use super::takeoff::Slab;
use super::written::SlabWritten;
use crate::input::phrases::EdgeKind;
use crate::reading::{Problem, Problems};

/// Only slabs that were placed by each other are held against each other: of others nobody said where they lie.
pub(super) fn check(slabs: &[(Slab, SlabWritten)], contacts: &[Contact], problems: &mut Problems) {
    let roots: Vec<usize> = (0..slabs.len()).map(|i| root(slabs, i)).collect();
    for (i, (slab, written)) in slabs.iter().enumerate() {
        let place = reference(written).map_or(slab.place, |at| at.place);
        if written.on.is_some() {
            over_an_opening(slabs, i, problems);
            continue;
        }
        let before = slabs[..i].iter().zip(&roots);
        let met = before.filter(|((_, other), root)| **root == roots[i] && other.on.is_none());
        for ((other, _), _) in met {
            if slab.outline.overlaps(&other.outline) {
                let message = format!("`{}` lies partly where `{}` lies", slab.key, other.key);
                problems.push(
                    Problem::new("slabs-overlap", message)
                        .at(place)
                        .also(other.place, "the other slab")
                        .help("check sizes and the distance from the end of the edge; concrete is counted for both"),
                );
            }
        }
    }
    for contact in contacts {
        let ((base, side), (placed, _)) = (contact.base(), contact.placed());
        shared::check_face(&slabs[base].0, side, &slabs[placed].0, problems);
        beside_a_house(slabs, *contact, problems);
    }
}

/// The slab that all places of its group are counted from; a circle of places is reported elsewhere.
fn root(slabs: &[(Slab, SlabWritten)], i: usize) -> usize {
    let mut at = i;
    for _ in 0..slabs.len() {
        let Some(reference) = reference(&slabs[at].1) else {
            break;
        };
        let name = &reference.value.slab;
        let Some(next) = slabs.iter().position(|(slab, _)| slab.key == *name) else {
            break;
        };
        at = next;
    }
    at
}

fn over_an_opening(slabs: &[(Slab, SlabWritten)], i: usize, problems: &mut Problems) {
    let (slab, written) = &slabs[i];
    let Some(on) = &written.on else {
        return;
    };
    let Some((base, _)) = slabs.iter().find(|(base, _)| base.key == on.value.slab) else {
        return;
    };
    let holes = base.outline.holes().iter().zip(&base.openings);
    for (hole, opening) in holes {
        if hole.overlaps(&slab.outline) {
            let message = format!(
                "`{}` stands over `{}`, which is left open",
                slab.key, opening.name.value
            );
            problems.push(
                Problem::new("over-an-opening", message)
                    .at(on.place)
                    .also(opening.name.place, "left open here")
                    .help("move one of the two"),
            );
        }
    }
}

fn beside_a_house(slabs: &[(Slab, SlabWritten)], contact: Contact, problems: &mut Problems) {
    let (base, side) = contact.base();
    let (slab, written) = &slabs[contact.placed().0];
    let house = slabs[base]
        .0
        .edges
        .iter()
        .any(|part| part.side == side && part.kind == EdgeKind::House);
    let Some(place) = reference(written).filter(|_| house).map(|at| at.place) else {
        return;
    };
    let message = format!(
        "`{}` lies beside an edge of `{}` where the house stands",
        slab.key, slabs[base].0.key
    );
    problems.push(
        Problem::new("beside-a-house", message)
            .at(place)
            .help("place it at another edge, or take `house` off that edge; a step at the door stands `on` the slab"),
    );
}
