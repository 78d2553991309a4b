//! What another book says otherwise, item by item, on one day.

use rust_decimal::Decimal;

use super::{Dated, ItemKey, PriceBook};
use crate::reading::suggest;
use crate::values::{Day, Percent, Unit, UnitPrice};

/// One item that is not the same in both books.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ItemDifference {
    pub item: ItemKey,
    pub what: Difference,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Difference {
    Price {
        old: UnitPrice,
        new: UnitPrice,
        unit: Unit,
        /// None where the old price is nothing.
        by: Option<Percent>,
    },
    /// Sold by another unit: the two prices say nothing about each other.
    Unit {
        old: (UnitPrice, Unit),
        new: (UnitPrice, Unit),
    },
    Added(UnitPrice, Unit),
    /// With the new item whose name is near, if there is one.
    Gone(Option<ItemKey>),
    /// One of the books has no price on this day.
    NoPrice {
        in_new: bool,
    },
}

impl Difference {
    /// Another price by the same unit.
    pub fn moved(old: UnitPrice, new: UnitPrice, unit: Unit) -> Self {
        Self::Price {
            old,
            new,
            unit,
            by: by(old, new),
        }
    }

    /// A rise or fall by more than a half is more often a slip of the pen than a price.
    /// Common practice, no source.
    pub fn is_jump(&self) -> bool {
        match self {
            Self::Price { by, .. } => by.is_none_or(|by| Decimal::from(50) < by.number().abs()),
            Self::Unit { .. } | Self::Added(..) | Self::Gone(_) | Self::NoPrice { .. } => false,
        }
    }
}

/// Every difference of the listed prices of a day, in the order of names.
pub fn differences(old: &PriceBook, new: &PriceBook, day: Day) -> Vec<ItemDifference> {
    let mut found = Vec::new();
    for (key, item) in old.items.iter() {
        let what = match new.items.get(key) {
            None => {
                let added = new.items.keys().filter(|key| !old.items.contains_key(*key));
                let near = suggest::closest(key, added.map(String::as_str));
                Some(Difference::Gone(near.map(str::to_owned)))
            }
            Some(other) => match (listed(&item.dated, day), listed(&other.dated, day)) {
                (Some(was), Some(is)) if item.unit != other.unit => Some(Difference::Unit {
                    old: (was, item.unit),
                    new: (is, other.unit),
                }),
                (Some(was), Some(is)) if was != is => Some(Difference::moved(was, is, item.unit)),
                (Some(_), None) => Some(Difference::NoPrice { in_new: true }),
                (None, Some(_)) => Some(Difference::NoPrice { in_new: false }),
                (Some(_), Some(_)) | (None, None) => None,
            },
        };
        found.extend(what.map(|what| ItemDifference {
            item: key.clone(),
            what,
        }));
    }
    for (key, item) in new.items.iter() {
        if !old.items.contains_key(key)
            && let Some(price) = listed(&item.dated, day)
        {
            found.push(ItemDifference {
                item: key.clone(),
                what: Difference::Added(price, item.unit),
            });
        }
    }
    found.sort_by(|a, b| a.item.cmp(&b.item));
    found
}

/// The listed price of a day: the newest that has begun.
pub fn listed(dated: &[Dated], day: Day) -> Option<UnitPrice> {
    let begun = dated.iter().rev().find(|dated| dated.from <= day);
    begun.map(|dated| dated.price)
}

fn by(old: UnitPrice, new: UnitPrice) -> Option<Percent> {
    let (old, new) = (old.dollars(), new.dollars());
    (!old.is_zero()).then(|| Percent::new((new - old) / old * Decimal::ONE_HUNDRED))
}
