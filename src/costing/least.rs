//! Smallest charges in money: what an order comes to less than its item's is a line of its own.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::lines::{Cause, LineItem, Tier};
use crate::input::book::ItemKey;
use crate::trade::order::Section;
use crate::trade::term::{of, sum};
use crate::trade::working::Quantity;

/// A line for every order that comes to less than its item's smallest charge.
pub(super) fn least_charges(lines: &mut Vec<LineItem>) {
    let mut orders: BTreeMap<(ItemKey, usize), Vec<&LineItem>> = BTreeMap::new();
    for line in &*lines {
        if let Some(least) = &line.least {
            let order = (least.item.clone(), least.pour);
            orders.entry(order).or_default().push(line);
        }
    }
    let several = |item: &str| 1 < orders.keys().filter(|(other, _)| other == item).count();
    let charges = orders.iter().filter_map(|((item, pour), order)| {
        let name = if several(item) {
            format!("minimum charge, {item}, pour {}", pour + 1)
        } else {
            format!("minimum charge, {item}")
        };
        charge(item, name, order)
    });
    let charges: Vec<LineItem> = charges.collect();
    lines.extend(charges);
}

/// None where nothing of it is bought, or enough.
fn charge(item: &ItemKey, name: String, order: &[&LineItem]) -> Option<LineItem> {
    let (first, least) = order
        .iter()
        .find_map(|line| Some((line, line.least.as_ref()?)))?;
    let cost = Quantity::money(
        "lines added up",
        "cost of the order",
        sum(order.iter().map(|line| &line.amount)),
    );
    let mut bought = order.iter().filter_map(|line| line.quantity.as_ref());
    let nothing = bought.all(|much| much.value().is_zero());
    if nothing || least.amount.value <= cost.as_money() {
        return None;
    }
    let smallest = Quantity::said("smallest charge", &least.amount);
    let amount = Quantity::money(
        "smallest charge of an order − what it costs",
        name,
        of(&smallest) - &cost,
    );
    Some(LineItem {
        title: format!("Minimum charge, {}", first.title),
        class: first.class,
        group: first.group.clone(),
        taxed: first.taxed,
        shares: shares(order),
        ..LineItem::new(Cause::LeastCharge(item.clone()), Tier::Direct, amount)
    })
}

/// As the lines of the order are shared, each by what it costs.
fn shares(order: &[&LineItem]) -> Vec<(Section, Decimal)> {
    let mut found: BTreeMap<Section, Decimal> = BTreeMap::new();
    for line in order {
        let whole: Decimal = line.shares.iter().map(|(_, share)| share).sum();
        for (section, share) in line.shares.iter().filter(|_| !whole.is_zero()) {
            *found.entry(*section).or_default() += line.amount.value() * share / whole;
        }
    }
    found.into_iter().collect()
}
