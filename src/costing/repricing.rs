//! A quote at the prices it was made by, and the same job at other prices.

use rust_decimal::Decimal;

use super::{Asked, Books, LineItem, Priced, Prices, Room, Totals, books, estimate, room};
use crate::input::book::{Basis, ItemKey, PriceBook};
use crate::input::business::PricePolicy;
use crate::reading::At;
use crate::trade::order::NeedItem;
use crate::values::{Money, Percent, UnitPrice};

/// What another price is asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WhatIf {
    pub item: ItemKey,
    pub to: Other,
}

/// The other price of an item.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Other {
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
                Other::Price(price) => price,
                Other::By(percent) => {
                    UnitPrice::new(dated.price.dollars() * (Decimal::ONE + percent.fraction()))
                }
            };
            prices.with(&what_if.item, price)
        })
    };
    days.iter().map(day).collect()
}

/// One side of the question: a job priced by one book.
#[derive(Clone, Copy, Debug)]
pub struct Side<'a> {
    pub priced: &'a Priced,
    pub book: &'a PriceBook,
    pub days: &'a [Prices],
}

/// What became of one quote.
#[derive(Clone, Debug)]
pub struct Repriced {
    pub old: Totals,
    /// By the same policy.
    pub new: Totals,
    /// The new cost, and the price as it was promised.
    pub held: Totals,
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
    /// What the job costs more than when it was quoted.
    pub fn harm(&self) -> Money {
        self.new.cost - self.old.cost
    }
}

/// Holds the old against the new; `items` are those whose headroom is asked for.
pub fn repriced(
    old: Side<'_>,
    new: Side<'_>,
    policy: &PricePolicy,
    fixed: Option<&At<Money>>,
    items: &[ItemKey],
) -> Repriced {
    let before = old.priced.totals();
    let promised = At {
        value: before.price,
        place: policy.round_up_to.place,
    };
    // The first lines are those of the needs; the estimate puts the rest after them.
    let direct: Vec<LineItem> = new.priced.lines[..new.priced.needs.needs.len()].to_vec();
    let held = Priced {
        needs: new.priced.needs.clone(),
        lines: estimate(direct, policy, Some(&promised)),
    };
    let buys = |key: &&ItemKey| {
        let mut needs = held.needs.needs.iter();
        needs.any(|need| matches!(&need.item, NeedItem::Item(item) if item.value == **key))
    };
    let mut to_zero = policy.clone();
    to_zero.margin_floor.value = Percent::new(Decimal::ZERO);
    let far = |item: &ItemKey, policy: &PricePolicy| {
        let asked = Asked {
            priced: &held,
            book: new.book,
            policy,
            days: new.days,
            fixed: Some(&promised),
        };
        room(asked, item)
    };
    Repriced {
        old: before,
        new: new.priced.totals(),
        why: books(old.priced, new.priced, new.book, new.days, policy, fixed),
        rooms: items
            .iter()
            .filter(buys)
            .map(|item| Headroom {
                item: item.clone(),
                to_floor: far(item, policy),
                to_zero: far(item, &to_zero),
            })
            .collect(),
        held: held.totals(),
    }
}
