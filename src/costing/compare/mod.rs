//! Two estimates of one job: every cause of their difference; the changes add up to it by construction.

use std::borrow::Cow;

use super::bought::Bought;
use super::estimate::{PriceSaid, estimate};
use super::lines::{Cause, LineItem, Tier};
use super::pricing::Pricing;
use crate::input::book::{Class, Dated};
use crate::trade::order::{Need, NeedItem};
use crate::trade::working::Quantity;
use crate::values::{Amount, Money, UnitPrice};

/// How much of a thing, and at which price if it has one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sold {
    pub quantity: Amount,
    pub price: Option<UnitPrice>,
}

impl Sold {
    fn of(line: &LineItem) -> Option<Self> {
        line.quantity.as_ref().map(|quantity| Self {
            quantity: quantity.amount(),
            price: line.price.as_ref().map(|dated| dated.price),
        })
    }
}

/// One cause in several estimates: what it comes to in each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joined<'a> {
    pub cause: Cow<'a, Cause>,
    /// In the words of the first estimate that has it.
    pub title: &'a str,
    pub class: Option<Class>,
    pub side: Tier,
    pub amounts: Vec<Money>,
    /// Of the first line with this cause, where it is something bought.
    pub sold: Vec<Option<Sold>>,
}

/// One cause in an old and a new estimate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CauseChange {
    pub cause: Cause,
    pub title: String,
    pub class: Option<Class>,
    pub side: Tier,
    pub old: Money,
    pub new: Money,
    pub old_sold: Option<Sold>,
    pub new_sold: Option<Sold>,
}

impl CauseChange {
    pub fn by(&self) -> Money {
        self.new - self.old
    }
}

/// Outer join of estimates on the cause, class by class; a cause that is missing comes to nothing.
///
/// Where the owner fixed a price, what profit, minimum and rounding would have been is
/// one cause with it.
pub fn join<'a>(estimates: &[Vec<&'a LineItem>]) -> Vec<Joined<'a>> {
    let fixed = |lines: &Vec<&LineItem>| lines.iter().any(|line| line.cause == Cause::Fixed);
    let any_fixed = estimates.iter().any(fixed);
    let mut joined: Vec<Joined<'a>> = Vec::new();
    for (i, lines) in estimates.iter().enumerate() {
        for line in lines {
            let cause = match &line.cause {
                Cause::Profit | Cause::Minimum | Cause::Rounding if any_fixed => {
                    Cow::Owned(Cause::Fixed)
                }
                cause => Cow::Borrowed(cause),
            };
            let at = joined.iter().position(|one| one.cause == cause);
            let at = at.unwrap_or_else(|| {
                joined.push(Joined {
                    cause,
                    title: &line.title,
                    class: line.class,
                    side: line.side,
                    amounts: vec![Money::ZERO; estimates.len()],
                    sold: vec![None; estimates.len()],
                });
                joined.len() - 1
            });
            let one = &mut joined[at];
            one.amounts[i] = one.amounts[i] + line.money();
            one.sold[i] = one.sold[i].or_else(|| Sold::of(line));
        }
    }
    joined.sort_by_key(|one| (one.side, one.class));
    joined
}

/// What changed from an old estimate to a new one, cause by cause; unchanged ones are left out.
pub fn compare(old: Vec<&LineItem>, new: Vec<&LineItem>) -> Vec<CauseChange> {
    join(&[old, new])
        .into_iter()
        .filter(|one| one.amounts[0] != one.amounts[1])
        .map(|one| CauseChange {
            old: one.amounts[0],
            new: one.amounts[1],
            old_sold: one.sold[0],
            new_sold: one.sold[1],
            cause: one.cause.into_owned(),
            title: one.title.to_owned(),
            class: one.class,
            side: one.side,
        })
        .collect()
}

/// Why one takeoff costs something else by another price book, in the order it is told.
#[derive(Clone, Debug, Default)]
pub struct Books {
    /// Other prices for what the first book makes you buy.
    pub prices: Vec<CauseChange>,
    /// Other rules of buying, at the prices of the second book.
    pub rules: Vec<CauseChange>,
    /// Overhead, contingency, profit, minimum, rounding and tax, which follow.
    pub added: Vec<CauseChange>,
}

impl Books {
    pub fn all(&self) -> impl Iterator<Item = &CauseChange> {
        self.prices.iter().chain(&self.rules).chain(&self.added)
    }
}

/// Compares the job by two books; `at` is how the second one prices.
///
/// Between the two stands the first book's shopping list at the second book's prices. A
/// thing the second book does not sell, or sells by another unit, has no second price:
/// its whole change belongs to the rules.
pub fn books(old: Bought<'_>, new: Bought<'_>, at: Pricing<'_>, said: PriceSaid<'_>) -> Books {
    let between = old.needs.iter().zip(old.lines).map(|(need, line)| {
        let price = second_price(need, old.first_pour, line, new, at);
        price.map_or_else(|| line.clone(), |dated| line.at_price(dated))
    });
    let between = estimate(between.collect(), &at.business.price, said);
    Books {
        prices: compare(pick(old.lines, true), pick(&between, true)),
        rules: compare(pick(&between, true), pick(new.lines, true)),
        added: compare(pick(old.lines, false), pick(new.lines, false)),
    }
}

/// The lines of direct cost, or those of what is added to it.
fn pick(lines: &[LineItem], direct: bool) -> Vec<&LineItem> {
    let lines = lines.iter();
    lines
        .filter(|line| (line.side == Tier::Direct) == direct)
        .collect()
}

/// What the second book asks for the same need, else for the item of the same name.
fn second_price<'a>(
    need: &Need,
    first_pour: usize,
    line: &LineItem,
    new: Bought<'a>,
    at: Pricing<'a>,
) -> Option<&'a Dated> {
    let NeedItem::Item(key) = &need.item else {
        return None;
    };
    let unit = |line: &LineItem| line.quantity.as_ref().map(Quantity::amount).map(|a| a.unit);
    let mut lines = new.lines.iter();
    let same = lines.find(|other| other.cause == line.cause && unit(other) == unit(line));
    same.and_then(|line| line.price.as_ref()).or_else(|| {
        let sold = at.book.items.get(&key.value)?.unit;
        let prices = at.day(need.placement, first_pour);
        prices.get(&key.value).filter(|_| Some(sold) == unit(line))
    })
}

#[cfg(test)]
mod tests;
