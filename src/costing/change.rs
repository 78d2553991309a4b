//! What a change order comes to: work added, work left out, lines with a price; then tax, once.
//!
//! Work is priced as the job was, with overhead, contingency and profit, but without what a
//! job has only once: the minimum job, the rounding of its price, and crew days filled up.

use super::bought::Priced;
use super::estimate::receipts_tax;
use super::lines::{Cause, Tier};
use crate::input::book::{OnceA, PriceBook, Role};
use crate::input::business::{Business, DayRule, TaxBase};
use crate::input::change::PriceLine;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Money;

/// Whether work is added or left out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    Added,
    Deducted,
}

impl Way {
    /// An amount, below zero where it is left out.
    pub fn signed(self, amount: Money) -> Money {
        match self {
            Self::Added => amount,
            Self::Deducted => -amount,
        }
    }
}

/// A change order's price before tax, and each tax.
#[derive(Clone, Debug)]
pub struct ChangePrice {
    pub price: Quantity,
    pub taxes: Vec<(String, Quantity)>,
}

/// The business as it prices a part of a job that is under way.
///
/// Crew hours count as they are worked out. `comes_again` says whether the crew has a day more
/// of this, with its travel and its set-up.
pub fn business_for_changes(business: &Business, comes_again: bool) -> Business {
    let mut own = business.clone();
    own.unforeseen.clear();
    own.price.minimum.value = Money::ZERO;
    own.price.round_up_to.value = Money::ZERO;
    // One rate falls on the whole change, not on each part of it.
    own.price
        .taxes
        .retain(|tax| !matches!(tax.base, TaxBase::Sale | TaxBase::Receipts));
    own.crew.day_rule.value = DayRule::ByTheHour;
    if !comes_again {
        own.crew.travel.value.value = rust_decimal::Decimal::ZERO;
        own.crew.set_up.value.value = rust_decimal::Decimal::ZERO;
    }
    own
}

/// The book as it prices a part of a job that is under way: what there is once a job was there.
pub fn book_for_changes(book: &PriceBook) -> PriceBook {
    let mut own = book.clone();
    own.rules.also.retain(|_, rule| {
        let once = rule.once.as_ref().map(|once| once.value);
        once != Some(OnceA::Job)
    });
    own
}

/// The book as it prices work for which no truck and no pump comes, or comes less.
pub fn book_without_trucks(book: &PriceBook) -> PriceBook {
    let mut own = book_for_changes(book);
    // An order is neither saved nor added.
    for item in own.items.values_mut() {
        if item.least_charge().is_some() {
            item.least = None;
        }
    }
    own.rules.also.retain(|_, rule| {
        let once = rule.once.as_ref().map(|once| once.value);
        !matches!(once, Some(OnceA::Pour | OnceA::Load | OnceA::Trip))
    });
    if let Some(supply) = &mut own.rules.supply {
        supply.short_load = None;
        supply.charges.fees.clear();
        supply.charges.zones.clear();
        supply.charges.saturday = None;
    }
    for role in [Role::Delivery, Role::Standing, Role::Pump, Role::Trip] {
        if let Some(item) = own.rules.roles.get_mut(&role) {
            item.value = None;
        }
    }
    own
}

/// Adds the parts up, and the taxes of the whole.
pub fn change_price(
    parts: &[(Way, &Priced)],
    lines: &[PriceLine],
    business: &Business,
) -> ChangePrice {
    let mut amounts: Vec<Quantity> = parts
        .iter()
        .map(|(way, priced)| part(*way, priced))
        .collect();
    amounts.extend(lines.iter().map(|line| {
        Quantity::given(
            line.says.clone(),
            line.price.value.0.into(),
            line.price.place,
        )
    }));
    let price = Quantity::money("parts added up", "price of the change", sum(&amounts));
    let taxes = business
        .price
        .taxes
        .iter()
        .filter_map(|tax| {
            let amount = match tax.base {
                TaxBase::Purchases => return None,
                TaxBase::Sale => {
                    let rate = Quantity::said(tax.name.clone(), &tax.rate);
                    Quantity::money(
                        "rate × price of the change, once",
                        tax.name.clone(),
                        of(&price) * &rate,
                    )
                }
                TaxBase::Receipts => {
                    let rate = Quantity::said(tax.name.clone(), &tax.rate);
                    receipts_tax(&price, &rate, tax)
                }
                TaxBase::Materials => {
                    let of_parts: Vec<Quantity> = parts
                        .iter()
                        .flat_map(|(way, priced)| taxes(*way, priced, &tax.name))
                        .collect();
                    Quantity::money("parts added up", tax.name.clone(), sum(&of_parts))
                }
            };
            Some((tax.name.clone(), amount))
        })
        .collect();
    ChangePrice { price, taxes }
}

/// The price before tax, below zero where it is left out.
fn part(way: Way, priced: &Priced) -> Quantity {
    let lines = priced.lines.iter().filter(|line| line.side != Tier::Tax);
    let price = Quantity::money(
        "lines added up",
        "price before tax",
        sum(lines.map(|line| &line.amount)),
    );
    signed(way, price)
}

fn taxes(way: Way, priced: &Priced, name: &str) -> Vec<Quantity> {
    let lines = priced.lines.iter();
    lines
        .filter(|line| matches!(&line.cause, Cause::Tax(tax) if tax == name))
        .map(|line| signed(way, line.amount.clone()))
        .collect()
}

fn signed(way: Way, amount: Quantity) -> Quantity {
    match way {
        Way::Added => amount,
        Way::Deducted => {
            let name = format!("{} left out", amount.name());
            Quantity::money("taken off", name, number(0) - &amount)
        }
    }
}
