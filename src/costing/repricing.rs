//! A quote at the prices it was made by, and the same job at other prices.

use rust_decimal::Decimal;

use super::bought::Bought;
use super::compare::{Books, books};
use super::estimate::PriceSaid;
use super::prices::Prices;
use super::pricing::Pricing;
use super::sensitivity::{Estimated, Room, room};
use super::totals::Totals;
use crate::input::book::{Basis, ItemKey};
use crate::trade::order::{Need, NeedItem};
use crate::values::{Money, Percent, UnitPrice};

/// What another price is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WhatIf {
    pub item: ItemKey,
    pub to: Supposed,
}

/// The other price of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Supposed {
    By(Percent),
    Price(UnitPrice),
}

/// The prices with what is supposed; a price that is held stays, since that is what a hold is for.
pub fn supposed(days: &[Prices], what_ifs: &[WhatIf]) -> Vec<Prices> {
    let day = |prices: &Prices| {
        what_ifs.iter().fold(prices.clone(), |prices, what_if| {
            let Some(dated) = prices.get(&what_if.item) else {
                return prices;
            };
            if matches!(dated.basis, Basis::Held { .. }) {
                return prices;
            }
            let price = match what_if.to {
                Supposed::Price(price) => price,
                Supposed::By(percent) => {
                    UnitPrice::new(dated.price.dollars() * (Decimal::ONE + percent.fraction()))
                }
            };
            prices.with(&what_if.item, price)
        })
    };
    days.iter().map(day).collect()
}

/// What became of one quote.
#[derive(Clone, Debug)]
pub struct Repriced {
    pub old: Totals,
    /// By the same policy.
    pub new: Totals,
    pub why: Books,
    pub rooms: Vec<Headroom>,
}

/// How far one item may still rise while the promised price is held.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Headroom {
    pub item: ItemKey,
    /// Before the margin falls below its floor.
    pub to_floor: Room,
    /// Before the job loses money.
    pub to_zero: Room,
}

impl Repriced {
    /// The margin at the new cost, if the price stays as it was promised.
    pub fn margin_held(&self) -> Option<Decimal> {
        let held = Totals {
            price: self.old.price,
            ..self.new
        };
        held.margin()
    }

    /// What the job costs more than when it was quoted.
    pub fn harm(&self) -> Money {
        self.new.cost - self.old.cost
    }
}

/// Holds the old against the new, which is priced `at` the other prices; `items` are those whose
/// headroom is asked for.
pub fn repriced(
    old: Bought<'_>,
    new: Bought<'_>,
    at: Pricing<'_>,
    said: PriceSaid<'_>,
    items: &[ItemKey],
) -> Repriced {
    // What is promised is the old price, whatever the needs come to.
    let promised = Estimated {
        bought: Bought {
            lines: old.lines,
            ..new
        },
        at,
        said: PriceSaid::default(),
    };
    Repriced {
        old: Totals::of(old.lines),
        new: Totals::of(new.lines),
        why: books(old, new, at, said),
        rooms: items
            .iter()
            .filter_map(|item| headroom(promised, item))
            .collect(),
    }
}

/// None where the job does not buy the item.
fn headroom(promised: Estimated<'_>, item: &ItemKey) -> Option<Headroom> {
    let mut needs = promised.bought.needs.iter();
    let buys = |need: &Need| matches!(&need.item, NeedItem::Item(one) if one.value == *item);
    needs.any(buys).then(|| Headroom {
        item: item.clone(),
        to_floor: room(
            promised,
            item,
            promised.at.business.price.margin_floor.value,
        ),
        to_zero: room(promised, item, Percent::new(Decimal::ZERO)),
    })
}
