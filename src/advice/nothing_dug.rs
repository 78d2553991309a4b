//! Is the room for a slab and its base dug out by anybody?

use rust_decimal::Decimal;

use super::Case;
use crate::input::job::{RemovalMaterial, Slab};
use crate::reading::Problem;
use crate::values::{Amount, Length, Unit, rounding};

/// Less than half of what is covered is more often a slip than ground that is ready (common practice, no source).
fn little(dug: Decimal, covered: Decimal, first: &Slab) -> Vec<Problem> {
    if covered <= dug * Decimal::TWO {
        return Vec::new();
    }
    let message = format!(
        "soil is dug out over `{}`, and slabs with a base cover `{}`",
        Amount::new(rounding::to_places(dug, 0), Unit::SquareFoot),
        Amount::new(rounding::to_places(covered, 0), Unit::SquareFoot)
    );
    let help = "check the size; `under: [patio]` with `depth: 8 in` digs as far as the slabs go; if the rest of the ground is ready, leave it (common practice, no source)";
    vec![
        Problem::new("little-dug", message)
            .at(first.place)
            .help(help.replace("patio", &first.key)),
    ]
}

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // A slab upon another lies on no soil.
    let laid = case.slabs().filter(|(slab, _)| slab.on.is_none());
    let with_base = laid.filter_map(|(slab, found)| Some((slab, found.base.as_ref()?, found)));
    let all: Vec<_> = with_base.collect();
    let Some((first, ..)) = all.first() else {
        return Vec::new();
    };
    let removals = case.offer.quoted().needs.removals.iter();
    let soil = removals.filter(|one| one.material == RemovalMaterial::Soil);
    let soil: Vec<Decimal> = soil.map(|one| one.area.value()).collect();
    if !soil.is_empty() {
        let covered = all.iter().map(|(_, base, _)| base.area.value()).sum();
        return little(soil.into_iter().sum(), covered, first);
    }
    let yards: Decimal = all
        .iter()
        .map(|(_, base, found)| base.compacted.value() + found.concrete.value())
        .sum();
    let message = format!(
        "no soil is dug out, and concrete and base take `{}`",
        Amount::new(rounding::to_places(yards, 1), Unit::CubicYard)
    );
    let help = format!(
        "write what is dug, `remove: [{}]`; if the ground is ready or lies lower, leave it: the quote says that digging is not included",
        proposed(all.iter().map(|(slab, ..)| *slab))
    );
    vec![
        Problem::new("nothing-dug", message)
            .at(first.place)
            .help(help),
    ]
}

/// Under slabs that take as much room, concrete and base up to the inch; one entry for each depth.
fn proposed<'a>(slabs: impl Iterator<Item = &'a Slab>) -> String {
    let mut depths: Vec<(Length, Vec<&str>)> = Vec::new();
    for slab in slabs {
        let base = slab
            .base
            .as_ref()
            .map_or(Length::ZERO, |base| base.depth.value);
        let inches = rounding::round_up_to((slab.thickest() + base).inches(), Decimal::ONE);
        let depth = Length::of_feet(inches / Decimal::from(12));
        match depths.iter_mut().find(|(other, _)| *other == depth) {
            Some((_, keys)) => keys.push(&slab.key),
            None => depths.push((depth, vec![&slab.key])),
        }
    }
    let is_one = depths.len() == 1;
    let entries = depths.iter().map(|(depth, keys)| {
        let under = keys.join(", ");
        let name = if is_one {
            "soil".to_owned()
        } else {
            format!("soil under {}", keys[0])
        };
        format!("{name}: {{under: [{under}], depth: {depth}, of: soil}}")
    });
    entries.collect::<Vec<_>>().join(", ")
}
