//! Orders that are placed otherwise than as they are needed: more yards, or trucks filled another way.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::ConcreteOrder;
use super::loads::{loads, short_loads};
use crate::input::book::{Filling, Supply};
use crate::trade::tally::Tally;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit, rounding};

/// How one order is placed otherwise than as it is needed.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Placing {
    /// Beyond what is needed; below zero, so much less.
    pub more: Decimal,
    /// How its trucks are filled, where that is not the plant's usual way.
    pub refilled: Option<Filling>,
    /// What the working says of it.
    pub because: String,
}

/// The orders that are placed otherwise, by their names; an order that is not here is placed as it is needed.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Ordering(BTreeMap<String, Placing>);

/// Every order as it is needed.
pub static AS_NEEDED: Ordering = Ordering(BTreeMap::new());

impl Ordering {
    #[must_use]
    pub fn with(&self, order: &str, placing: Placing) -> Self {
        let mut own = self.clone();
        own.0.insert(order.to_owned(), placing);
        own
    }

    pub fn of(&self, order: &str) -> Option<&Placing> {
        self.0.get(order)
    }
}

impl Placing {
    /// What is asked for beyond need, or short of it; none where it is as needed.
    pub(super) fn beyond(&self, tally: &Tally<'_>) -> Option<Quantity> {
        if self.more.is_zero() {
            return None;
        }
        let working = Working::plan(self.because.clone(), Vec::new(), "");
        let amount = Amount::new(self.more, Unit::CubicYard);
        Some(Quantity::new(tally.name("beyond need"), amount, working))
    }

    /// What is otherwise about it.
    pub fn in_words(&self) -> String {
        let more = Amount::new(self.more.abs(), Unit::CubicYard);
        let beyond = if self.more.is_sign_negative() {
            "less"
        } else {
            "more"
        };
        let yards = (!self.more.is_zero()).then(|| format!("{more} {beyond} than is needed"));
        let trucks = self.refilled.map(|filling| match filling {
            Filling::InTurn => "full trucks and the rest on the last".to_owned(),
            Filling::Evened => "trucks evened".to_owned(),
        });
        let both: Vec<String> = yards.into_iter().chain(trucks).collect();
        both.join(" and ")
    }
}

impl ConcreteOrder {
    /// What is on each truck.
    pub fn trucks(&self) -> String {
        let loads = self.loads.iter();
        let loads: Vec<String> = loads
            .map(|yards| rounding::to_places(*yards, 4).normalize().to_string())
            .collect();
        loads.join(" + ")
    }

    /// Every other way to place it that might cost less, the least change first; never below what is needed.
    ///
    /// More yards are worth asking about where fewer loads are short, and up to full trucks.
    /// An order that the owner set stays what it is.
    pub fn other_ways(&self, supply: &Supply) -> Vec<Placing> {
        let needed = self.needed.value();
        if self.bags.is_some()
            || needed.is_zero()
            || matches!(self.needed.working(), Working::Set { .. })
        {
            return Vec::new();
        }
        let supply = &*supply.with_trucks(self.truck.as_ref(), None);
        let other = match supply.filling {
            Filling::InTurn => Filling::Evened,
            Filling::Evened => Filling::InTurn,
        };
        let waits = self.held.as_ref().map(|held| held.on_call.value());
        let mut ways: Vec<Placing> = Vec::new();
        for refilled in [None, Some(other)] {
            let by = &*supply.with_trucks(None, refilled);
            let mut totals = vec![needed];
            totals.extend(with_fewer_short(needed, waits, by));
            totals.push(full_trucks(needed, by));
            totals.dedup();
            // Trucks filled another way that carry the same are no other way.
            totals.retain(|total| match refilled {
                None => needed < *total,
                Some(_) => loads(*total, waits, by) != loads(*total, waits, supply),
            });
            ways.extend(totals.into_iter().map(|total| Placing {
                more: total - needed,
                refilled,
                because: String::new(),
            }));
        }
        ways.sort_by_key(|way| way.more);
        ways
    }

    /// One truck less, filled up, where that still covers the drawing and the pump's prime.
    pub fn one_truck_less(&self, supply: &Supply) -> Option<Placing> {
        let supply = &*supply.with_trucks(self.truck.as_ref(), None);
        let needed = self.needed.value();
        let truck = supply.truck.value.value;
        let total = full_trucks(needed, supply) - truck;
        let drawn = self.net.value() + self.prime.as_ref().map_or(Decimal::ZERO, Quantity::value);
        let is_enough = drawn <= total && Decimal::ZERO < total && total < needed;
        is_enough.then(|| Placing {
            more: total - needed,
            refilled: None,
            because: String::new(),
        })
    }
}

fn full_trucks(order: Decimal, supply: &Supply) -> Decimal {
    rounding::round_up_to(order, supply.truck.value.value)
}

/// Orders from here on of which fewer loads are short than of any less, up to where none is.
fn with_fewer_short(order: Decimal, waits: Option<Decimal>, supply: &Supply) -> Vec<Decimal> {
    let step = supply.sold_in.value.value;
    let Some(rule) = &supply.short_load else {
        return Vec::new();
    };
    if step.is_zero() {
        return Vec::new();
    }
    let most = full_trucks(order, supply).max(rule.under.value.value);
    let mut fewest = short_loads(order, waits, supply).len();
    let mut found = Vec::new();
    let mut total = rounding::round_up_to(order, step);
    while total <= most && 0 < fewest {
        let short = short_loads(total, waits, supply).len();
        if short < fewest {
            fewest = short;
            found.push(total);
        }
        total += step;
    }
    found
}
