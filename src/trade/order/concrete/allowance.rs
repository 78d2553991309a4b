//! What is ordered over the drawing: part of it, or what a base dug too deep takes, or the least.

use super::Batch;
use crate::input::business::OrderPolicy;
use crate::input::job::Takeoff;
use crate::tables::yard;
use crate::trade::measure::SlabQuantities;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, largest, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// The largest of the three, figured once for the order.
pub(super) fn allowance(
    net: &Quantity,
    batch: &Batch<'_>,
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    policy: &OrderPolicy,
    is_bagged: bool,
    tally: &mut Tally<'_>,
) -> Quantity {
    let dug = batch
        .members
        .iter()
        .filter(|&&i| takeoff.slabs[i].is_on_ground());
    let area = Quantity::by(
        "slabs on the ground added up",
        "area poured on the ground",
        Unit::SquareFoot,
        sum(dug.map(|&i| &slabs[i].area)),
    );
    let deep = Quantity::inches("thickness allowance", &policy.thickness_allowance);
    let least = Quantity::said("smallest allowance", &policy.smallest_allowance);
    let mut over = vec![
        share(net, batch, takeoff, slabs, policy),
        yard::volume(of(&area), &deep),
    ];
    // The least is for what nobody can fetch once the truck is gone; another bag is opened.
    let rule = if is_bagged {
        "the larger of percent and thickness allowance × area ÷ 324"
    } else {
        over.push(of(&least));
        "the largest of percent, thickness allowance × area ÷ 324, and the least"
    };
    let extra = largest(over);
    tally.between(rule, "allowance", Unit::CubicYard, extra)
}

/// One part of all of it, or where slabs have different ones, the part of each.
fn share(
    net: &Quantity,
    batch: &Batch<'_>,
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    policy: &OrderPolicy,
) -> Term {
    let of_slab = |&i: &usize| {
        let own = takeoff.allowance_of(&takeoff.slabs[i]);
        own.unwrap_or(&policy.allowance)
    };
    let said: Vec<_> = batch.members.iter().map(of_slab).collect();
    if said.iter().all(|one| one.value == said[0].value) {
        return of(net) * &Quantity::said("allowance", said[0]);
    }
    let concrete = || batch.members.iter().map(|&i| &slabs[i].concrete);
    let each: Vec<Quantity> = said
        .iter()
        .zip(concrete())
        .map(|(said, concrete)| {
            let percent = Quantity::said("allowance", said);
            let rule = "concrete × its own allowance";
            let over = of(concrete) * &percent;
            Quantity::by(rule, "allowance of a slab", Unit::CubicYard, over)
        })
        .collect();
    // The net may have been set: then it is more or less of every slab.
    sum(&each) * net / sum(concrete())
}
