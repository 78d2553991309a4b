//! Boxes, lids and rings by the piece; the extra trip when a lid comes later.

use std::collections::BTreeMap;

use super::{List, Section, Ways};
use crate::input::book::{BoxStock, ItemKey, Role};
use crate::input::business::DayCount;
use crate::input::job::{Lid, SetBox, Takeoff};
use crate::input::phrases::Adjust;
use crate::reading::At;
use crate::trade::measure::SlabQuantities;
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

/// An item, and the part of the job each piece of it serves.
type Wanted = (At<ItemKey>, Vec<(Section, Quantity)>);

pub(super) fn list(takeoff: &Takeoff, list: &mut List<'_>) {
    let rules = list.ways.rules;
    // Pieces of one item for one kind of box are bought together.
    let mut wanted: BTreeMap<(&str, &str), Wanted> = BTreeMap::new();
    for (section, set, stock) in known(takeoff, rules) {
        for (what, item) in bought(set, stock) {
            let parts = wanted
                .entry((&set.stock.value, what))
                .or_insert_with(|| (item.clone(), Vec::new()));
            parts.1.push((section, piece(set)));
        }
    }
    for ((stock, what), (item, parts)) in wanted {
        let name = format!("{stock} {what}");
        list.buy(&item, &name, "one for each box", &parts, None);
    }
    if is_extra_trip(takeoff, list.ways) {
        let once = Quantity::by(
            "once, for all lids on order",
            "trip to set lids",
            Unit::Trip,
            number(1),
        );
        list.buy_role(
            Role::Trip,
            "trip to set lids",
            "once, for all lids on order",
            &[(Section::Whole, once)],
            None,
        );
    }
}

/// Whether the crew comes once more only to set lids. Where days are counted by stage, the stage
/// of coming back has its trips already.
pub(in crate::trade) fn is_extra_trip(takeoff: &Takeoff, ways: Ways<'_>) -> bool {
    let mut boxes = takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    ways.crew.day_count.value == DayCount::ByTheJob && boxes.any(SetBox::waits_for_lid)
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

/// Soft strips around the boxes that have one.
pub(super) fn strips(slabs: &[SlabQuantities]) -> impl Iterator<Item = (Section, Quantity)> {
    let slabs = slabs.iter().enumerate();
    slabs.flat_map(move |(i, slab)| {
        let strips = slab.boxes.iter().filter_map(|one| one.strip.clone());
        strips.map(move |strip| (Section::Slab(i), strip))
    })
}
