//! What do short loads cost, and what would ordering more do?

use rust_decimal::Decimal;

use super::Case;
use crate::input::book::{Role, ShortCharge, ShortLoad};
use crate::reading::Problem;
use crate::trade::order::ConcreteOrder;
use crate::values::{Amount, Unit, rounding};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let rule = case
        .book
        .rules
        .supply
        .as_ref()
        .and_then(|supply| supply.short_load.as_ref());
    let Some(rule) = rule else {
        return Vec::new();
    };
    let orders = case.offer.quoted().needs.orders.iter();
    orders
        .filter_map(|order| answer(case, rule, order))
        .collect()
}

fn answer(case: Case<'_>, rule: &ShortLoad, order: &ConcreteOrder) -> Option<Problem> {
    let prices = case.days.get(order.placement)?;
    let item = case
        .book
        .rules
        .roles
        .get(&Role::ShortLoad)?
        .value
        .as_ref()?;
    let each = prices.get(item)?;
    let fee = rounding::to_cents(order.short.value() * each.price.dollars());
    if fee.is_zero() {
        return None;
    }
    let missing = if rule.charge == ShortCharge::Flat {
        order
            .loads
            .iter()
            .map(|load| (rule.under.value.value - load).max(Decimal::ZERO))
            .sum()
    } else {
        order.short.value()
    };
    let mix = case.book.rules.mixes.get(&order.mix.value)?;
    let concrete = prices.get(&mix.item.value)?;
    let cost = rounding::to_cents(missing * concrete.price.dollars());
    let yards = Amount::new(missing, Unit::CubicYard);
    let message = format!(
        "`{}` comes in a short load, which costs {fee}",
        order.order.name()
    );
    let problem = Problem::new("short-load", message).at(order.mix.place);
    Some(problem.help(format!(
        "ordering {yards} more would save that and cost {cost} of concrete; it pays only where you can use it, in another slab of the same pour"
    )))
}
