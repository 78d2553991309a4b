//! What the rules of buying cost: how much of a line is allowance, rounding up, short loads, standing.
//!
//! A line is split, never priced again: its parts add up to it.

use rust_decimal::Decimal;

use super::bought::Priced;
use super::lines::{Cause, LineItem};
use crate::input::book::Class;
use crate::trade::order::{ConcreteOrder, TOGETHER};
use crate::trade::{Quantity, Working};
use crate::values::{Amount, Money, Percent, rounding};

/// A rule that makes the job buy more than the drawing shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BuyingRule {
    /// Concrete over the drawing.
    Allowance,
    /// Over what is needed.
    Waste,
    /// Lost in the line of the pump.
    PumpPrime,
    /// Up to how it is sold.
    RoundUp,
    /// The plant brings no less.
    SmallestOrder,
    /// Ordered beyond need, because that costs less.
    BeyondNeed,
    /// An order costs no less.
    LeastCharge,
    ShortLoad,
    /// Trucks past their free minutes.
    Standing,
    /// Hours up to whole steps of crew days.
    CrewDays,
}

/// What one rule costs in one line; it is in that line already.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Effect {
    pub rule: BuyingRule,
    /// The line's own title.
    pub title: String,
    pub amount: Amount,
    pub cost: Money,
}

/// Every effect, rule by rule.
pub fn effects(priced: &Priced) -> Vec<Effect> {
    let mut found = Vec::new();
    for line in &priced.lines {
        let name = match &line.cause {
            Cause::Need(name) => name,
            Cause::LeastCharge(_) => {
                found.push(Effect {
                    rule: BuyingRule::LeastCharge,
                    title: line.title.clone(),
                    amount: line.amount.amount(),
                    cost: line.money(),
                });
                continue;
            }
            _ => continue,
        };
        let order = |order: &&ConcreteOrder| order.order.name() == name;
        if let Some(order) = priced.needs.orders.iter().find(order) {
            found.extend(of_order(order, line));
        } else if name == priced.needs.crew.charged.name() || name == "other labor" {
            found.extend(of_days(priced, line));
        } else if let Some(rule) = charged(priced, name) {
            found.extend(line.quantity.as_ref().map(|quantity| Effect {
                rule,
                title: line.title.clone(),
                amount: quantity.amount(),
                cost: line.money(),
            }));
        } else {
            found.extend(of_steps(line));
        }
    }
    found.retain(|effect| !effect.cost.is_zero());
    found.sort_by_key(|effect| effect.rule);
    found
}

/// A charge of the plant that is nothing but the effect of a rule.
fn charged(priced: &Priced, name: &str) -> Option<BuyingRule> {
    priced.needs.orders.iter().find_map(|order| {
        if order.short.name() == name {
            Some(BuyingRule::ShortLoad)
        } else if order.standing.name() == name {
            Some(BuyingRule::Standing)
        } else {
            None
        }
    })
}

/// An order is the drawing, the allowance, the pump's prime, and the rest that makes it up.
fn of_order(order: &ConcreteOrder, line: &LineItem) -> Vec<Effect> {
    let named = |name: &str| {
        let parts = order.needed.parts();
        let part = parts.iter().find(|part| part.name() == name);
        part.map_or(Decimal::ZERO, Quantity::value)
    };
    if matches!(order.order.working(), Working::Set { .. }) {
        return Vec::new();
    }
    let allowance = named(&format!("{} allowance", order.order.name()));
    let prime = named("pump prime");
    let rest = if named("smallest order").is_zero() {
        BuyingRule::RoundUp
    } else {
        BuyingRule::SmallestOrder
    };
    let net = order.net.value();
    let needed = order.needed.value();
    split(
        line,
        net,
        &[
            (BuyingRule::Allowance, allowance),
            (BuyingRule::PumpPrime, prime),
            (rest, needed - net - allowance - prime),
            (BuyingRule::BeyondNeed, order.order.value() - needed),
        ],
    )
}

/// What is wasted, and what goes up to whole steps; a fee for each load is no rounding of a load.
fn of_steps(line: &LineItem) -> Vec<Effect> {
    let Some(quantity) = &line.quantity else {
        return Vec::new();
    };
    let mut parts = quantity.made_of().into_iter();
    let waste = parts.rfind(|part| part.name() == "waste");
    let needed = match (quantity.before_step(), waste) {
        (Some(needed), _) => needed,
        (None, Some(_)) => quantity.value(),
        (None, None) => return Vec::new(),
    };
    if line.class == Some(Class::Fee) || quantity.rule() == TOGETHER {
        return Vec::new();
    }
    let net = waste.map_or(needed, |waste| {
        needed / (Decimal::ONE + Percent::new(waste.value()).fraction())
    });
    split(
        line,
        net,
        &[
            (BuyingRule::Waste, needed - net),
            (BuyingRule::RoundUp, quantity.value() - needed),
        ],
    )
}

fn of_days(priced: &Priced, line: &LineItem) -> Vec<Effect> {
    let crew = &priced.needs.crew;
    if matches!(crew.charged.working(), Working::Set { .. }) {
        return Vec::new();
    }
    // Where each task has its line, the last one holds what is charged beside them.
    let all = line
        .quantity
        .as_ref()
        .map_or(Decimal::ZERO, Quantity::value);
    let more = crew.charged.value() - crew.hours.value();
    split(line, all - more, &[(BuyingRule::CrewDays, more)])
}

/// The line's money in proportion; parts that are nothing, and lines that are not made of these parts, give none.
fn split(line: &LineItem, needed: Decimal, more: &[(BuyingRule, Decimal)]) -> Vec<Effect> {
    let Some(quantity) = &line.quantity else {
        return Vec::new();
    };
    let weights: Vec<Decimal> = std::iter::once(needed)
        .chain(more.iter().map(|(_, amount)| *amount))
        .collect();
    if weights.iter().any(Decimal::is_sign_negative) {
        return Vec::new();
    }
    let parts = rounding::split(line.money(), &weights);
    let more = more.iter().zip(parts.into_iter().skip(1));
    more.filter(|((_, amount), _)| !amount.is_zero())
        .map(|((rule, amount), cost)| Effect {
            rule: *rule,
            title: line.title.clone(),
            amount: Amount::new(*amount, quantity.amount().unit),
            cost,
        })
        .collect()
}
