//! Boxes, lids and rings by the piece; the extra trip when a lid comes later.

use std::collections::BTreeMap;

use super::{List, Parts, Policies, Section, whole};
use crate::input::book::{BoxStock, ItemKey, Role};
use crate::input::business::{DayCount, SetLids};
use crate::input::job::{Lid, SetBox, Takeoff};
use crate::input::phrases::Adjust;
use crate::reading::At;
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Every box of the job that the book knows, with its slab.
pub(in crate::trade) fn known<'a>(
    takeoff: &'a Takeoff,
    rules: &'a crate::input::book::Rules,
) -> impl Iterator<Item = (Section, &'a SetBox, &'a BoxStock)> {
    let slabs = takeoff.slabs.iter().enumerate();
    slabs.flat_map(move |(i, slab)| {
        slab.boxes.iter().filter_map(move |one| {
            let stock = rules.boxes.get(&one.stock.value)?;
            Some((Section::Slab(i), one, stock))
        })
    })
}

/// One of something, for a part of the job.
pub(in crate::trade) fn piece(set: &SetBox) -> Quantity {
    Quantity::by("each one", set.name.value.clone(), Unit::Piece, number(1))
}

pub(super) fn list(takeoff: &Takeoff, list: &mut List<'_>) {
    // Pieces of one item for one kind of box are bought together.
    let mut wanted: BTreeMap<(&str, &str), (&At<ItemKey>, Parts)> = BTreeMap::new();
    for (section, set, stock) in known(takeoff, list.by.rules) {
        for (what, item) in bought(set, stock) {
            let key = (set.stock.value.as_str(), what);
            let (_, parts) = wanted.entry(key).or_insert((item, Parts::new()));
            parts.push((section, piece(set)));
        }
    }
    for ((stock, what), (item, parts)) in wanted {
        list.buy(item, format!("{stock} {what}"), "one for each box", &parts);
    }
    if is_extra_trip(takeoff, list.by) {
        let (rule, name) = ("once, for all lids on order", "trip to set lids");
        let once = Quantity::by(rule, name, Unit::Trip, number(1));
        list.buy_for_purpose(Role::Trip, name, rule, whole(once));
    }
}

/// Whether the crew comes once more only to set lids. Where days are counted by stage, that visit
/// has its trip already.
pub(in crate::trade) fn is_extra_trip(takeoff: &Takeoff, by: Policies<'_>) -> bool {
    let mut boxes = takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    by.crew.day_count.value == DayCount::ByTheJob
        && by.crew.lids == SetLids::ByThemselves
        && boxes.any(SetBox::waits_for_lid)
}

/// What has to be bought for one box.
fn bought<'a>(set: &SetBox, stock: &'a BoxStock) -> Vec<(&'static str, &'a At<ItemKey>)> {
    if let Some(adjust) = &set.adjust {
        return match adjust.value {
            Adjust::Raise(_) => stock.ring.iter().map(|ring| ("rings", ring)).collect(),
            Adjust::Lower(_) => Vec::new(),
        };
    }
    let mut all = vec![("boxes", &stock.item)];
    let lid = stock.lid.iter();
    match set.lid.value {
        Lid::Now => all.extend(lid.map(|lid| ("lids", lid))),
        Lid::OnOrder => {
            all.extend(lid.map(|lid| ("lids set later", lid)));
            let temporary = stock.temporary_lid.iter();
            all.extend(temporary.map(|lid| ("temporary lids", lid)));
        }
        Lid::Theirs => {}
    }
    all
}
