//! What the slabs need beside concrete: steel, fiber, base, forms, strip, curing compound.

mod dowels;
mod loose;
mod sections;
mod steel;

use super::finishes::cured_by;
use super::{ConcreteOrder, List, of_each};
use crate::input::book::{Curing, Role};
use crate::input::job::Takeoff;
use crate::trade::measure::SlabQuantities;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn list(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    loose::fiber(takeoff, orders, list);
    loose::base(takeoff, slabs, list);
    steel::bars(slabs, list);
    steel::mesh(takeoff, slabs, list);
    steel::chairs(takeoff, slabs, list);
    steel::tie_wire(takeoff, slabs, list);
    dowels::list(slabs, list);
    let apart = list.by.rules.roles.contains_key(&Role::DeepForms);
    let formed = list.memo.each("formed edge", takeoff, slabs, |_, slab| {
        Some(sections::formed(slab, apart))
    });
    list.buy_role(
        Role::Forms,
        "form boards",
        "edges that need a form",
        &formed,
    );
    if apart {
        let rule = "edges deeper than an ordinary board, and the sides of steps";
        let deep = of_each(slabs, sections::deep_form);
        list.buy_role(Role::DeepForms, "deep form boards", rule, &deep);
    }
    stakes(takeoff, slabs, list);
    let mut strip = of_each(slabs, |slab| Some(slab.edges.strip.clone()));
    strip.extend(super::boxes::strips(slabs));
    list.buy_role(
        Role::IsolationStrip,
        "isolation strip",
        "edges at walls, old concrete and curbs",
        &strip,
    );
    let coverage = Quantity::said("coverage of a gallon", &list.by.order.compound_coverage);
    let compound = |surface: Quantity| {
        let (rule, term) = ("area ÷ coverage", of(&surface) / &coverage);
        Quantity::by(rule, "curing compound", Unit::Gallon, term)
    };
    let compound = list
        .memo
        .each("curing compound", takeoff, slabs, |_, slab| {
            Some(compound(slab.surface()))
        });
    list.buy_role(
        Role::CuringCompound,
        "curing compound",
        "area ÷ coverage; 200 sq ft to the gallon is the usual test rate (ASTM C309, from memory)",
        &cured_by(Curing::Compound, takeoff, compound),
    );
    let rule = "slabs added up, laps included";
    let sheet = of_each(slabs, |slab| slab.retarder.clone());
    list.buy_role(Role::VaporRetarder, "vapor retarder", rule, &sheet);
    super::pump::list(takeoff, orders, list);
}

/// One at each end of a form and between, no farther apart than the owner says.
fn stakes(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let spacing = Quantity::feet("stake spacing", &list.by.order.stake_spacing);
    let gaps = |length: &Quantity| (of(length) / &spacing).whole();
    let of_form = |rule, stakes| Quantity::by(rule, "stakes", Unit::Piece, stakes);
    let parts = list.memo.each("stakes", takeoff, slabs, |_, slab| {
        let ends = slab.edges.formed.iter().map(|length| {
            let rule = "length ÷ spacing up to a whole one, + 1";
            of_form(rule, gaps(length) + number(1))
        });
        // A form that closes on itself has no end: its last stake is its first.
        let rings = slab.edges.rings.iter().map(|length| {
            let rule = "length ÷ spacing up to a whole one, all round";
            of_form(rule, gaps(length))
        });
        let pieces: Vec<Quantity> = ends.chain(rings).collect();
        Some(of_form("pieces of form added up", sum(&pieces)))
    });
    list.buy_role(
        Role::Stakes,
        "stakes",
        "each form: length ÷ spacing + 1; common practice, no source",
        &parts,
    );
}
