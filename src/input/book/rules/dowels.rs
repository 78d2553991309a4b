//! A kind of dowel: the bar, where it goes, what holds it.

use std::collections::BTreeMap;

use crate::input::book::ItemKey;
use crate::input::phrases::DowelBar;
use crate::reading::{At, Place};
use crate::values::{Amount, Length, Percent};

/// Bars across an edge, by the name the owner gives them.
#[derive(Clone, Debug)]
pub struct DowelStock {
    pub item: At<ItemKey>,
    pub bar: At<DowelBar>,
    pub length: At<Length>,
    /// Of the hole in concrete that stays.
    pub depth: At<Length>,
    /// Across the hole.
    pub hole: At<Length>,
    pub spacing: At<Length>,
    /// From each end of the edge to the nearest one.
    pub from_ends: At<Length>,
    /// On the end that slides; none is charged where there is none.
    pub cap: Option<At<ItemKey>>,
    pub adhesive: Option<Adhesive>,
}

/// What bonds a bar in its hole.
#[derive(Clone, Debug)]
pub struct Adhesive {
    /// `none` where it is not charged.
    pub item: Option<At<ItemKey>>,
    pub cartridge: At<Amount>,
    /// What stays in nozzle and cartridge or runs out of the hole.
    pub loss: At<Percent>,
}

/// Every item that dowels name.
pub(in crate::input::book) fn items_named(
    dowels: &BTreeMap<String, DowelStock>,
) -> impl Iterator<Item = (&str, Place)> {
    dowels.values().flat_map(|kind| {
        let adhesive = kind.adhesive.iter().flat_map(|adhesive| &adhesive.item);
        [&kind.item]
            .into_iter()
            .chain(&kind.cap)
            .chain(adhesive)
            .map(|at| (at.value.as_str(), at.place))
    })
}
