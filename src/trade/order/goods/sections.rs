//! What thickened edges and steps need: deep forms, boards for risers.

use crate::trade::measure::SlabQuantities;
use crate::trade::term::{Term, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Edges and risers that take an ordinary board; deep ones too where the book has no other.
pub(super) fn formed(slab: &SlabQuantities, deep_apart: bool) -> Quantity {
    let mut term = of(&slab.edges.straight) + &slab.edges.curved;
    let mut rule = "straight and curved";
    if !deep_apart && let Some(deep) = deep(slab) {
        term = term + deep;
        rule = "straight, curved and deep";
    }
    if let Some(steps) = &slab.steps {
        term = term + &steps.riser_form;
        rule = "edges and risers";
    }
    Quantity::by(rule, "formed edge", Unit::Foot, term)
}

/// Edges deeper than an ordinary board, and the sides of steps.
fn deep(slab: &SlabQuantities) -> Option<Term> {
    let sides = slab
        .steps
        .as_ref()
        .and_then(|steps| steps.side_form.as_ref());
    match (slab.edges.deep.value().is_zero(), sides) {
        (true, None) => None,
        (false, None) => Some(of(&slab.edges.deep)),
        (true, Some(sides)) => Some(of(sides)),
        (false, Some(sides)) => Some(of(&slab.edges.deep) + sides),
    }
}

pub(super) fn deep_form(slab: &SlabQuantities) -> Option<Quantity> {
    let (rule, term) = ("deep edges and the sides of steps", deep(slab)?);
    Some(Quantity::by(rule, "deep form", Unit::Foot, term))
}
