//! Steel as it is bought: bars by the stick, mesh by the sheet, chairs.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::input::book::Role;
use crate::input::job::Takeoff;
use crate::tables::bars::Bar;
use crate::trade::measure::{Run, SlabQuantities, lap};
use crate::trade::order::{List, Section};
use crate::trade::term::of;
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
        let plan = list.worked.plan(&runs, stock.stock.value, lap(bar, &stock));
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
pub(super) fn chairs(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let area = &list.ways.order.chair_area;
    let each = Quantity::given("area held by a chair", area.value, area.place);
    let parts = list.worked.each("chairs", takeoff, slabs, |_, slab| {
        (slab.bars.is_some() || slab.mesh.is_some()).then(|| {
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
