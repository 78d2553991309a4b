//! Dowels as they are bought: bars by the piece, caps, adhesive by the whole cartridge.

use std::collections::BTreeMap;

use crate::input::book::{DowelStock, ItemKey};
use crate::input::job::Pin;
use crate::reading::At;
use crate::trade::measure::{DowelQuantities, SlabQuantities};
use crate::trade::order::{List, Parts, Section, shares};
use crate::trade::term::{Term, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn list(slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut by_kind: BTreeMap<(Pin, &str), Vec<(Section, &DowelQuantities)>> = BTreeMap::new();
    for (i, slab) in slabs.iter().enumerate() {
        for one in &slab.dowels {
            let key = (one.pin, one.kind.as_str());
            by_kind
                .entry(key)
                .or_default()
                .push((Section::Slab(i), one));
        }
    }
    let mut bonded: Vec<(&DowelStock, Parts)> = Vec::new();
    for ((pin, kind), found) in by_kind {
        let Some(stock) = list.by.rules.dowels.get(kind) else {
            continue;
        };
        let of_each = |what: &dyn Fn(&DowelQuantities) -> Option<Quantity>| -> Parts {
            let parts = found.iter();
            parts
                .filter_map(|(section, one)| Some((*section, what(one)?)))
                .collect()
        };
        let bars = of_each(&|one| Some(one.count.clone()));
        let name = format!("{}, {kind}", pin.name());
        list.buy(&stock.item, name, "edges of each slab", &bars);
        // A cap leaves room in the new slab for the end that slides toward the old one.
        if let (Some(cap), Pin::Dowels) = (&stock.cap, pin) {
            let holes = of_each(&|one| Some(one.holes.clone()));
            let rule = "one for each drilled dowel";
            list.buy(cap, format!("caps, {kind}"), rule, &holes);
        }
        bonded.push((stock, of_each(&|one| one.adhesive.clone())));
    }
    adhesive(bonded, list);
}

/// Cartridges are opened one after the other, whatever they fill: whole ones, once an item.
fn adhesive(bonded: Vec<(&DowelStock, Parts)>, list: &mut List<'_>) {
    let mut by_item: BTreeMap<&ItemKey, (&At<ItemKey>, Vec<Term>, Parts)> = BTreeMap::new();
    for (stock, parts) in bonded {
        let Some(adhesive) = &stock.bond.0 else {
            continue;
        };
        let Some(item) = &adhesive.item else {
            continue;
        };
        let loss = Quantity::said("loss", &adhesive.loss);
        let cartridge = Quantity::said("cartridge", &adhesive.cartridge);
        let empty = || (item, Vec::new(), Parts::new());
        let (_, terms, all) = by_item.entry(&item.value).or_insert_with(empty);
        let filled = parts.iter().filter(|(_, part)| !part.value().is_zero());
        terms.extend(filled.map(|(_, part)| (of(part) + of(part) * &loss) / &cartridge));
        all.extend(parts);
    }
    for (key, (item, terms, parts)) in by_item {
        let Some(fraction) = terms.into_iter().reduce(|a, b| a + b) else {
            continue;
        };
        let cartridges = Quantity::by(
            "(holes filled + loss) ÷ a cartridge, up to a whole one",
            format!("cartridges, {key}"),
            Unit::Piece,
            fraction.whole(),
        );
        let name = format!("adhesive, {key}");
        list.buy_for(
            item,
            name,
            "whole cartridges",
            cartridges,
            None,
            shares(&parts),
        );
    }
}
