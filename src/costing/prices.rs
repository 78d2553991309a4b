//! The prices of a day: holds beat the list.

use std::collections::BTreeMap;

use crate::input::book::{Basis, Dated, ItemKey, PriceBook};
use crate::values::{Day, UnitPrice};

/// The only prices costing ever sees: those of one day, for one job.
#[derive(Clone, Debug)]
pub struct Prices {
    pub day: Day,
    by_item: BTreeMap<ItemKey, Dated>,
}

impl Prices {
    pub fn get(&self, item: &str) -> Option<&Dated> {
        self.by_item.get(item)
    }

    /// The same prices for work of another day.
    pub fn on(&self, day: Day) -> Self {
        Self {
            day,
            ..self.clone()
        }
    }

    /// The same day with another price for one item; an item that has no price gets none.
    pub fn with(&self, item: &str, price: UnitPrice) -> Self {
        let mut other = self.clone();
        if let Some(dated) = other.by_item.get_mut(item) {
            dated.price = price;
            // What an hour was made of does not make the other price.
            dated.wage = None;
        }
        other
    }
}

/// Prices of `day`: the newest that has begun, or a hold that covers the day and the job.
pub fn prices(book: &PriceBook, day: Day, job: &str) -> Prices {
    let mut by_item: BTreeMap<ItemKey, Dated> = BTreeMap::new();
    for (key, item) in book.items.iter() {
        if let Some(dated) = item.dated.iter().rev().find(|dated| dated.from <= day) {
            by_item.insert(key.clone(), dated.clone());
        }
    }
    for hold in &book.holds {
        let begun = hold.from.is_none_or(|from| from <= day);
        let for_us = hold.job.as_deref().is_none_or(|wanted| wanted == job);
        if begun && day <= hold.until && for_us {
            let from = hold.from.unwrap_or(day);
            by_item.insert(
                hold.item.value.clone(),
                Dated {
                    from,
                    price: hold.price,
                    basis: Basis::Held {
                        until: hold.until,
                        note: hold.note.clone(),
                    },
                    wage: None,
                    place: hold.item.place,
                },
            );
        }
    }
    Prices { day, by_item }
}
