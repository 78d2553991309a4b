//! Steel as it is bought: bars by the stick, mesh by the sheet.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::input::book::BarStock;
use crate::input::job::Takeoff;
use crate::tables::bars::Bar;
use crate::trade::measure::{Run, SlabQuantities, weigh};
use crate::trade::order::{List, Parts, Section, Shares, shares};
use crate::trade::term::{of, sum};
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
        let Some(stock) = list.by.rules.bars.get(&bar.to_string()) else {
            continue;
        };
        let of_size = || {
            slabs.iter().enumerate().flat_map(move |(i, slab)| {
                let of_bar = slab.steel().filter(move |bars| bars.bar == bar);
                of_bar.map(move |bars| (i, bars))
            })
        };
        let runs: Vec<Run> = of_size().flat_map(|(_, bars)| bars.runs.clone()).collect();
        let planned = list.memo.plan(runs, stock.stock.value);
        let placed: Vec<Quantity> = of_size().map(|(_, bars)| bars.placed.clone()).collect();
        let rule = "longest pieces first, offcuts used again";
        let sticks = Quantity::new(
            format!("{bar} bars"),
            Amount::new(Decimal::from(planned.plan.sticks()), Unit::Piece),
            Working::plan(planned.how.clone(), placed, rule),
        );
        let sticks = list.sets.settle(sticks);
        if !sticks.value().is_zero() {
            let placed = of_size().map(|(i, bars)| (Section::Slab(i), bars.placed.value()));
            sold(bar, stock, sticks, placed.collect(), list);
        }
    }
}

/// Buys whole sticks as their item is counted, and up to how it is sold.
fn sold(bar: Bar, stock: &BarStock, sticks: Quantity, placed: Shares, list: &mut List<'_>) {
    let Some(selling) = list.by.rules.selling.get(&stock.item.value) else {
        return;
    };
    let long = Quantity::feet("length of a stick", &stock.stock);
    let feet = |name: String| {
        Quantity::by(
            "sticks × length of each",
            name,
            Unit::Foot,
            of(&sticks) * &long,
        )
    };
    let much = match selling.unit {
        Unit::Pound => {
            let feet = feet(format!("{bar} bars, feet bought"));
            weigh(bar, &feet, format!("{bar} bars by weight"))
        }
        Unit::Foot => feet(format!("{bar} bars by the foot")),
        _ => sticks,
    };
    if selling.step.is_zero() && selling.smallest.is_zero() {
        let much = match selling.unit {
            Unit::Pound | Unit::Foot => list.sets.settle(much),
            // Sticks may be set already.
            _ => much,
        };
        list.take(&stock.item, much, None, placed);
    } else {
        let name = format!("{} as sold", much.name());
        let rule = "up to how they are sold";
        list.buy_for(&stock.item, name, rule, much, None, placed);
    }
}

pub(super) fn mesh(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut by_style: BTreeMap<&String, Parts> = BTreeMap::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        if let (Some(style), Some(sheets)) = (&slab.mesh, &measured.mesh) {
            let parts = by_style.entry(&style.value).or_default();
            parts.push((Section::Slab(i), sheets.clone()));
        }
    }
    for (style, parts) in by_style {
        let Some(stock) = list.by.rules.mesh.get(style) else {
            continue;
        };
        let name = format!("mesh {style}");
        if !list.by.rules.is_roll(stock) {
            list.buy(&stock.item, name, "sheets of each slab", &parts);
            continue;
        }
        // Strips of every slab come off the same rolls; whole rolls are bought once, for all of them.
        let rolls = Quantity::by(
            "rolls of each slab added up, up to a whole one",
            format!("rolls of {name}"),
            Unit::Roll,
            sum(parts.iter().map(|(_, part)| part)).whole(),
        );
        list.buy_for(
            &stock.item,
            name,
            "whole rolls",
            rolls,
            None,
            shares(&parts),
        );
    }
}
