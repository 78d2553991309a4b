//! Every combination of options, priced: options are not additive.

use std::collections::BTreeMap;

use super::bought::{Priced, policies};
use super::estimate::PriceSaid;
use super::pricing::Pricing;
use super::unit_prices::{UnitCost, unit_prices};
use super::ways::ordered;
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::input::job::{Choice, Takeoff, choices};
use crate::reading::{Problem, Problems, Read};
use crate::trade::needs::{JobNeeds, Memo, needs};
use crate::trade::order::AS_NEEDED;
use crate::trade::sets;
use crate::values::{Day, Money};

/// What can be signed: the job as quoted, and with every choice.
#[derive(Clone, Debug)]
pub struct Offer {
    pub by_choice: BTreeMap<Choice, Priced>,
    pub as_quoted: Choice,
    /// Of work nobody could see, in the order of the business file.
    pub unit_prices: Vec<UnitCost>,
}

impl Offer {
    pub fn quoted(&self) -> &Priced {
        &self.by_choice[&self.as_quoted]
    }

    /// As if it were quoted with this choice made already.
    pub fn quoted_with(self, choice: Choice) -> Self {
        Self {
            as_quoted: choice,
            ..self
        }
    }
}

/// Reports every override that no quantity of a job answers to, without pricing it.
pub fn check_sets(
    takeoff: &Takeoff,
    book: &PriceBook,
    business: &Business,
    pours: &[Day],
    problems: &mut Problems,
) {
    let by = policies(book, business, pours, &AS_NEEDED);
    let mut memo = Memo::default();
    let needs = choices(&takeoff.options)
        .into_iter()
        .map(|choice| needs(takeoff.with(&choice), by, &mut memo).roots());
    sets::check(&takeoff.head.sets, needs, problems);
}

/// Prices the job with every choice; reports everything that has no price.
pub fn offer(takeoff: &Takeoff, at: Pricing<'_>, problems: &mut Problems) -> Read<Offer> {
    let before = problems.len();
    let mut by_choice: BTreeMap<Choice, Priced> = BTreeMap::new();
    let mut memo = Memo::default();
    for choice in choices(&takeoff.options) {
        let mut found = Problems::default();
        let priced = one(takeoff.with(&choice), at, &mut memo, &mut found);
        // Most problems are of the job as quoted, and would only be repeated by every choice.
        for one in found {
            if !problems.iter().any(|known| *known == one) {
                problems.push(one);
            }
        }
        by_choice.insert(choice, priced);
    }
    let unit_prices = unit_prices(at, problems);
    let needs = by_choice.values().map(|priced| &priced.needs);
    sets::check(&takeoff.head.sets, needs.map(JobNeeds::roots), problems);
    problems.none_since(before)?;
    Ok(Offer {
        by_choice,
        as_quoted: Choice::as_quoted(&takeoff.options),
        unit_prices,
    })
}

/// Prices the job with one choice only; overrides are not looked at.
pub fn with_choice(
    takeoff: &Takeoff,
    choice: &Choice,
    at: Pricing<'_>,
    problems: &mut Problems,
) -> Read<Priced> {
    let before = problems.len();
    let priced = one(takeoff.with(choice), at, &mut Memo::default(), problems);
    problems.none_since(before)?;
    Ok(priced)
}

/// The job as its orders are placed; discounts cannot take off more than there is.
fn one(taken: &Takeoff, at: Pricing<'_>, memo: &mut Memo, problems: &mut Problems) -> Priced {
    let priced = ordered(taken, at, memo, problems);
    if let Some(first) = PriceSaid::of(taken).discounts.first()
        && priced.totals().price < Money::ZERO
    {
        let message = "the discounts take off more than the whole price";
        let problem = Problem::new("discount-over-price", message).at(first.off.place);
        problems.push(problem.help("take less off, or raise the price"));
    }
    priced
}
