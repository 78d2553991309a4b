//! What the slabs need beside concrete: steel, fiber, base, forms, strip, curing compound.

mod dowels;
mod loose;
mod sections;
mod steel;

use rust_decimal_macros::dec;

use super::finishes::cured_by;
use super::{ConcreteOrder, List, Section};
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
    let each = |what: &dyn Fn(&SlabQuantities) -> Quantity| {
        slabs
            .iter()
            .enumerate()
            .map(|(i, slab)| (Section::Slab(i), what(slab)))
            .collect::<Vec<_>>()
    };
    let apart = list.ways.rules.roles.contains_key(&Role::DeepForms);
    let formed = list.worked.each("formed edge", takeoff, slabs, |_, slab| {
        Some(sections::formed(slab, apart))
    });
    list.buy_role(
        Role::Forms,
        "form boards",
        "edges that need a form",
        &formed,
        None,
    );
    sections::deep_forms(slabs, list);
    stakes(takeoff, slabs, list);
    let mut strip = each(&|slab| slab.edges.strip.clone());
    strip.extend(super::boxes::strips(slabs));
    list.buy_role(
        Role::IsolationStrip,
        "isolation strip",
        "edges at walls, old concrete and curbs",
        &strip,
        None,
    );
    let coverage = &list.ways.order.compound_coverage;
    let coverage = Quantity::given("coverage of a gallon", coverage.value, coverage.place);
    let compound = list
        .worked
        .each("curing compound", takeoff, slabs, |_, slab| {
            Some(Quantity::by(
                "area ÷ coverage",
                "curing compound",
                Unit::Gallon,
                of(&slab.surface()) / &coverage,
            ))
        });
    let compound = cured_by(Curing::Compound, takeoff, compound);
    list.buy_role(
        Role::CuringCompound,
        "curing compound",
        "area ÷ coverage; 200 sq ft to the gallon is the usual test rate (ASTM C309, from memory)",
        &compound,
        None,
    );
    sections::retarder(slabs, list);
    super::pump::list(takeoff, orders, list);
}

/// One at each end of a form and between, no farther apart than the owner says.
fn stakes(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let spacing = Quantity::feet("stake spacing", &list.ways.order.stake_spacing);
    let count = |slab: &SlabQuantities| {
        let mut pieces: Vec<Quantity> = slab
            .edges
            .formed
            .iter()
            .map(|length| {
                Quantity::by(
                    "length ÷ spacing up to a whole one, + 1",
                    "stakes",
                    Unit::Piece,
                    (of(length) / &spacing).whole() + number(dec!(1)),
                )
            })
            .collect();
        // A form that closes on itself has no end: its last stake is its first.
        pieces.extend(slab.edges.rings.iter().map(|length| {
            Quantity::by(
                "length ÷ spacing up to a whole one, all round",
                "stakes",
                Unit::Piece,
                (of(length) / &spacing).whole(),
            )
        }));
        Quantity::by(
            "pieces of form added up",
            "stakes",
            Unit::Piece,
            sum(&pieces),
        )
    };
    let parts = list
        .worked
        .each("stakes", takeoff, slabs, |_, slab| Some(count(slab)));
    list.buy_role(
        Role::Stakes,
        "stakes",
        "each form: length ÷ spacing + 1; common practice, no source",
        &parts,
        None,
    );
}
