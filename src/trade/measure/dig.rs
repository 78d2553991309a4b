//! Soil dug out under slabs: their areas and what lies past their forms, deeper under thick edges.

use super::base::{open_edges, runs_under};
use super::strips::beyond;
use super::{SlabQuantities, StepQuantities};
use crate::input::business::OrderPolicy;
use crate::input::job::{Removal, Slab, Takeoff};
use crate::trade::tally::Tally;
use crate::trade::term::sum;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// What soil is dug out for.
#[derive(Clone, Copy)]
pub(super) struct Ground<'a> {
    pub takeoff: &'a Takeoff,
    pub slabs: &'a [SlabQuantities],
    pub policy: &'a OrderPolicy,
}

/// The area, and cubic yards that lie deeper or beside it.
///
/// The depth is to the bottom of the base. Thick edges go deeper by what they hold below it; where
/// the base runs under them, by all that they hold below the slab.
pub(super) fn under(
    removal: &Removal,
    ground: Ground<'_>,
    tally: &mut Tally<'_>,
) -> (Quantity, Vec<Quantity>) {
    let wanted = |slab: &Slab| removal.under.iter().any(|name| name.value == slab.key);
    let slabs = ground.takeoff.slabs.iter().zip(ground.slabs);
    let (mut areas, mut deeper) = (Vec::new(), Vec::new());
    for (slab, found) in slabs.filter(|(slab, _)| wanted(slab)) {
        areas.push(found.area.clone());
        let past = &ground.policy.dig_past_forms;
        let title = format!("past the forms of {}", slab.key);
        areas.extend(beyond(slab, &open_edges(slab), past, &title, tally));
        if let Some(edge) = &found.thickened
            && !slab.sections.is_filled()
        {
            let all = slab.base.is_none() || runs_under(slab, ground.policy);
            let below = if all {
                Some(&edge.concrete)
            } else {
                edge.below_base.as_ref()
            };
            deeper.extend(below.cloned());
        }
        // Steps stand on the ground at their foot: it is dug for their base alone.
        let steps = found.steps.as_ref();
        deeper.extend(steps.and_then(StepQuantities::dug).cloned());
    }
    let name = tally.name("area");
    let rule = "slabs, and what is dug past their forms";
    let area = Quantity::by(rule, name, Unit::SquareFoot, sum(&areas));
    (area, deeper)
}
