//! Steel as it is bought: bars by the stick, mesh by the sheet, chairs.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::input::book::{ItemKey, Role};
use crate::input::job::Takeoff;
use crate::reading::At;
use crate::tables::bars::Bar;
use crate::trade::measure::{Run, SlabQuantities};
use crate::trade::order::{List, Section};
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

pub(super) fn bars(slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut sizes: Vec<Bar> = slabs
        .iter()
        .flat_map(|slab| slab.steel().map(|bars| bars.bar))
        .collect();
    sizes.sort();
    sizes.dedup();
    for bar in sizes {
        let Some(stock) = list.ways.rules.bars.get(&bar.to_string()).cloned() else {
            continue;
        };
        let of_size = || {
            slabs.iter().enumerate().flat_map(move |(i, slab)| {
                let of_bar = slab.steel().filter(move |bars| bars.bar == bar);
                of_bar.map(move |bars| (i, bars))
            })
        };
        let runs: Vec<Run> = of_size().flat_map(|(_, bars)| bars.runs.clone()).collect();
        let planned = list.worked.plan(runs, stock.stock.value);
        let placed: Vec<Quantity> = of_size().map(|(_, bars)| bars.placed.clone()).collect();
        let sticks = Quantity::new(
            format!("{bar} bars"),
            Amount::new(Decimal::from(planned.plan.sticks()), Unit::Piece),
            Working::Plan {
                how: planned.how.clone(),
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

pub(super) fn mesh(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
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
            if list.ways.rules.is_roll(&stock) {
                rolls(&stock.item, &style, &parts, list);
                continue;
            }
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

/// Strips of every slab come off the same rolls; whole rolls are bought once, for all of them.
fn rolls(item: &At<ItemKey>, style: &str, parts: &[(Section, Quantity)], list: &mut List<'_>) {
    let name = format!("mesh {style}");
    let whole = Quantity::by(
        "rolls of each slab added up, up to a whole one",
        format!("rolls of {name}"),
        Unit::Roll,
        sum(parts.iter().map(|(_, part)| part)).whole(),
    );
    let before = list.needs.len();
    list.buy(item, &name, "whole rolls", &[(Section::Whole, whole)], None);
    if let Some(need) = list.needs.get_mut(before) {
        need.shares = parts
            .iter()
            .map(|(section, part)| (*section, part.value()))
            .collect();
    }
}

/// Wire for the crossings that are tied; not charged where `use` names no item for it.
pub(super) fn tie_wire(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    if !list.ways.rules.roles.contains_key(&Role::TieWire) {
        return;
    }
    let order = list.ways.order;
    let tied = Quantity::percent("crossings tied", &order.crossings_tied);
    let tie = Quantity::inches("wire for a tie", &order.wire_for_a_tie);
    let (much, per) = (order.tie_wire.value.much, order.tie_wire.value.per);
    let weight = Quantity::given("weight of a roll", much, order.tie_wire.place);
    let per = Quantity::given("wire on a roll", per, order.tie_wire.place);
    let wire = |slab: &str, crossings: &Quantity| {
        let ties = Quantity::by(
            "crossings × share tied, up to a whole one",
            format!("{slab} wire ties"),
            Unit::Piece,
            (of(crossings) * &tied).whole(),
        );
        Quantity::by(
            "ties × inches ÷ 12 × pounds a foot",
            format!("{slab} tie wire"),
            Unit::Pound,
            of(&ties) * &tie / number(12) * &weight / &per,
        )
    };
    let parts = list.worked.each("tie wire", takeoff, slabs, |slab, found| {
        Some(wire(&slab.key, found.crossings.as_ref()?))
    });
    list.buy_role(
        Role::TieWire,
        "tie wire",
        "wire of each slab; common practice, no source",
        &parts,
        None,
    );
}

/// Steel stands on chairs; mesh laid on the ground and pulled up does not end in the middle.
pub(super) fn chairs(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let area = &list.ways.order.chair_area;
    let each = Quantity::given("area held by a chair", area.value, area.place);
    let parts = list.worked.each("chairs", takeoff, slabs, |_, slab| {
        (!slab.bars.is_empty() || slab.mesh.is_some()).then(|| {
            Quantity::by(
                "area ÷ area held by a chair",
                "chairs",
                Unit::Piece,
                (of(&slab.area) / &each).whole(),
            )
        })
    });
    list.buy_role(
        Role::Chairs,
        "chairs",
        "area ÷ area held by a chair; one in 9 to 25 sq ft is common practice, no source",
        &parts,
        None,
    );
}
