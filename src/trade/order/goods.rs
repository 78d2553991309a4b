//! What the slabs need beside concrete: steel, fiber, base, forms, strip, curing compound.

use std::collections::BTreeMap;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::sticks::cut_plan;
use super::{ConcreteOrder, List, Section};
use crate::input::book::{FiberBy, Role};
use crate::input::job::{Method, Takeoff};
use crate::tables::bars::Bar;
use crate::trade::measure::{Run, SlabQuantities};
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

pub(super) fn list(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    fiber(takeoff, orders, list);
    base(takeoff, slabs, list);
    bars(slabs, list);
    mesh(takeoff, slabs, list);
    chairs(slabs, list);
    let each = |what: &dyn Fn(&SlabQuantities) -> Quantity| {
        slabs
            .iter()
            .enumerate()
            .map(|(i, slab)| (Section::Slab(i), what(slab)))
            .collect::<Vec<_>>()
    };
    let formed = each(&|slab| {
        Quantity::by(
            "straight and curved",
            "formed edge",
            Unit::Foot,
            of(&slab.edges.straight) + &slab.edges.curved,
        )
    });
    list.buy_role(
        Role::Forms,
        "form boards",
        "edges that need a form",
        &formed,
        None,
    );
    stakes(slabs, list);
    let strip = each(&|slab| slab.edges.strip.clone());
    list.buy_role(
        Role::IsolationStrip,
        "isolation strip",
        "edges at walls, old concrete and curbs",
        &strip,
        None,
    );
    let coverage = &list.ways.order.compound_coverage;
    let coverage = Quantity::given("coverage of a gallon", coverage.value, coverage.place);
    let compound = each(&|slab| {
        Quantity::by(
            "area ÷ coverage",
            "curing compound",
            Unit::Gallon,
            of(&slab.area) / &coverage,
        )
    });
    list.buy_role(
        Role::CuringCompound,
        "curing compound",
        "area ÷ coverage; 200 sq ft to the gallon is the usual test rate (ASTM C309, from memory)",
        &compound,
        None,
    );
    if takeoff.access.by.value == Method::Pump {
        for (placement, _) in takeoff.placements.iter().enumerate() {
            let once = Quantity::by(
                "once a pour",
                format!("pump, pour {}", placement + 1),
                Unit::Trip,
                number(1),
            );
            list.buy_role(
                Role::Pump,
                &format!("pump, pour {}", placement + 1),
                "once a pour",
                &[(Section::Whole, once)],
                Some(placement),
            );
        }
    }
}

/// The plant adds fiber to a whole order; the crew adds whole bags.
fn fiber(takeoff: &Takeoff, orders: &[ConcreteOrder], list: &mut List<'_>) {
    for order in orders {
        let members = takeoff
            .slabs
            .iter()
            .filter(|slab| slab.placement == order.placement && slab.mix.value == order.mix.value);
        let mut names: Vec<&String> = members
            .filter_map(|slab| slab.fiber.as_ref().map(|fiber| &fiber.value))
            .collect();
        names.sort();
        names.dedup();
        for name in names {
            let Some(stock) = list.ways.rules.fiber.get(name).cloned() else {
                continue;
            };
            let dose = Quantity::given(
                "dose",
                Amount::new(
                    stock.dose.value.much.value / stock.dose.value.per.value,
                    Unit::Pound,
                ),
                stock.dose.place,
            );
            let need = format!("{name} fiber for {}", order.order.name());
            let quantity = match stock.by {
                FiberBy::Plant => Quantity::by(
                    "every ordered yard",
                    &need,
                    Unit::CubicYard,
                    of(&order.order),
                ),
                FiberBy::Us => {
                    let bag = Quantity::given("bag", stock.bag.value, stock.bag.place);
                    Quantity::by(
                        "ordered yards × dose ÷ a bag, up to a whole one",
                        &need,
                        Unit::Bag,
                        (of(&order.order) * &dose / &bag).whole(),
                    )
                }
            };
            list.buy(
                &stock.item,
                &need,
                "by the ordered yard",
                &[(Section::Whole, quantity)],
                Some(order.placement),
            );
        }
    }
}

/// Compacted yards become what is delivered, by the one factor of the book.
fn base(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut by_material: BTreeMap<String, Vec<(Section, Quantity)>> = BTreeMap::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let (Some(base), Some(compacted)) = (&slab.base, &measured.base) else {
            continue;
        };
        let Some(stock) = list.ways.rules.bases.get(&base.material.value) else {
            continue;
        };
        let factor = Quantity::given(
            "delivered for each compacted yard",
            Amount::new(
                stock.delivered.value.much.value / stock.delivered.value.per.value,
                stock.delivered.value.much.unit,
            ),
            stock.delivered.place,
        );
        let delivered = Quantity::by(
            "compacted × delivered for each",
            format!("{} {}", slab.key, base.material.value),
            stock.delivered.value.much.unit,
            of(compacted) * &factor,
        );
        by_material
            .entry(base.material.value.clone())
            .or_default()
            .push((Section::Slab(i), delivered));
    }
    for (material, parts) in by_material {
        if let Some(stock) = list.ways.rules.bases.get(&material).cloned() {
            list.buy(
                &stock.item,
                &format!("base, {material}"),
                "compacted yards × what is delivered for each",
                &parts,
                None,
            );
        }
    }
}

fn bars(slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut sizes: Vec<Bar> = slabs
        .iter()
        .filter_map(|slab| slab.bars.as_ref().map(|bars| bars.bar))
        .collect();
    sizes.sort();
    sizes.dedup();
    for bar in sizes {
        let Some(stock) = list.ways.rules.bars.get(&bar.to_string()).cloned() else {
            continue;
        };
        let of_size = || {
            slabs.iter().enumerate().filter_map(move |(i, slab)| {
                slab.bars
                    .as_ref()
                    .filter(|bars| bars.bar == bar)
                    .map(|bars| (i, bars))
            })
        };
        let runs: Vec<Run> = of_size().flat_map(|(_, bars)| bars.runs.clone()).collect();
        let lap = Decimal::from(bar.diameter().as_nanometres()) * stock.lap.value.value;
        let plan = cut_plan(
            &runs,
            stock.stock.value,
            Length::nanometres(i64::try_from(lap.ceil()).expect("a lap is short")),
        );
        let how = format!(
            "{} whole sticks of {}, and {} pieces cut from {} more; never fewer than {}",
            plan.full, stock.stock.value, plan.pieces, plan.cut, plan.least
        );
        let placed: Vec<Quantity> = of_size().map(|(_, bars)| bars.placed.clone()).collect();
        let sticks = Quantity::new(
            format!("{bar} bars"),
            Amount::new(Decimal::from(plan.sticks()), Unit::Piece),
            Working::Plan {
                how,
                of: placed,
                rule: "longest pieces first, offcuts used again",
            },
        );
        let name = sticks.name().to_owned();
        let settled = list.sets.settle(sticks);
        let before = list.needs.len();
        list.buy(
            &stock.item,
            &name,
            "whole sticks",
            &[(Section::Whole, settled.clone())],
            None,
        );
        if let Some(need) = list.needs.get_mut(before) {
            need.quantity = settled;
            need.shares = of_size()
                .map(|(i, bars)| (Section::Slab(i), bars.placed.value()))
                .collect();
        }
    }
}

fn mesh(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut by_style: BTreeMap<String, Vec<(Section, Quantity)>> = BTreeMap::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        if let (Some(style), Some(sheets)) = (&slab.mesh, &measured.mesh) {
            by_style
                .entry(style.value.clone())
                .or_default()
                .push((Section::Slab(i), sheets.clone()));
        }
    }
    for (style, parts) in by_style {
        if let Some(stock) = list.ways.rules.mesh.get(&style).cloned() {
            list.buy(
                &stock.item,
                &format!("mesh {style}"),
                "sheets of each slab",
                &parts,
                None,
            );
        }
    }
}

/// Steel stands on chairs; mesh laid on the ground and pulled up does not end in the middle.
fn chairs(slabs: &[SlabQuantities], list: &mut List<'_>) {
    let area = &list.ways.order.chair_area;
    let each = Quantity::given("area held by a chair", area.value, area.place);
    let steel = slabs
        .iter()
        .enumerate()
        .filter(|(_, slab)| slab.bars.is_some() || slab.mesh.is_some());
    let parts: Vec<(Section, Quantity)> = steel
        .map(|(i, slab)| {
            (
                Section::Slab(i),
                Quantity::by(
                    "area ÷ area held by a chair",
                    "chairs",
                    Unit::Piece,
                    (of(&slab.area) / &each).whole(),
                ),
            )
        })
        .collect();
    list.buy_role(
        Role::Chairs,
        "chairs",
        "area ÷ area held by a chair; one in 9 to 25 sq ft is common practice, no source",
        &parts,
        None,
    );
}

/// One at each end of a form and between, no farther apart than the owner says.
fn stakes(slabs: &[SlabQuantities], list: &mut List<'_>) {
    let spacing = Quantity::feet("stake spacing", &list.ways.order.stake_spacing);
    let count = |slab: &SlabQuantities| {
        let pieces: Vec<Quantity> = slab
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
        Quantity::by(
            "pieces of form added up",
            "stakes",
            Unit::Piece,
            sum(&pieces),
        )
    };
    let parts: Vec<(Section, Quantity)> = slabs
        .iter()
        .enumerate()
        .map(|(i, slab)| (Section::Slab(i), count(slab)))
        .collect();
    list.buy_role(
        Role::Stakes,
        "stakes",
        "each form: length ÷ spacing + 1; common practice, no source",
        &parts,
        None,
    );
}
