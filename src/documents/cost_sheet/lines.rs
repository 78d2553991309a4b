//! Lines of direct cost: what to order, and why so much.

use crate::costing::LineItem;
use crate::documents::views::cost::OrderRow;
use crate::documents::views::office::takeoff::substance;
use crate::documents::views::office::{Sheet, cause, numbered, unit};
use crate::input::book::Class;
use crate::trade::{Quantity, Working};
use crate::values::Amount;

/// A working longer than this says its rule instead; `explain` has it whole.
const LONGEST: usize = 78;

/// Class by class, each class named once.
pub(super) fn lines(sheet: &Sheet<'_>) -> Vec<OrderRow> {
    let all: Vec<&LineItem> = numbered(&sheet.offer.quoted().lines)
        .into_iter()
        .map(|(_, line)| line)
        .filter(|line| line.class.is_some())
        .collect();
    let mut rows = Vec::new();
    let mut before = None;
    for line in &all {
        let first = before != line.class;
        let alike = all.iter().filter(|other| other.title == line.title).count();
        rows.push(row(line, first, before.is_some(), 1 < alike));
        before = line.class;
    }
    rows
}

fn row(line: &LineItem, first: bool, white: bool, twins: bool) -> OrderRow {
    let quantity = line.quantity.as_ref();
    OrderRow {
        kind: if first && white { "group" } else { "plain" }.to_owned(),
        class: line.class.filter(|_| first).map_or("", heading).to_owned(),
        item: match line.class {
            // One wage, many tasks: the task says it.
            Some(Class::Labor) if twins => cause(&line.cause),
            _ if twins => format!("{} ({})", line.title, cause(&line.cause)),
            _ => line.title.clone(),
        },
        working: quantity.map_or_else(|| line.amount.shown(), working),
        quantity: quantity
            .map(|quantity| two_places(quantity.amount()).number())
            .unwrap_or_default(),
        unit: quantity
            .map(|quantity| unit(quantity.amount()))
            .unwrap_or_default(),
        price: line
            .price
            .as_ref()
            .map(|dated| dated.price.to_string())
            .unwrap_or_default(),
        amount: line.money().plain(),
    }
}

/// Enough to read; `takeoff` has all places.
pub(super) fn two_places(amount: Amount) -> Amount {
    let value = crate::values::rounding::to_places(amount.value, 2);
    Amount::new(value, amount.unit)
}

/// The working where it is short, else the rule it follows.
fn working(quantity: &Quantity) -> String {
    let quantity = substance(quantity);
    match quantity.working() {
        Working::Given(_) => "as you wrote it".to_owned(),
        Working::Shape { how, .. } => how.clone(),
        Working::Set { computed, .. } => {
            format!("set by you; computed {}", two_places(computed.amount()))
        }
        Working::Plan { .. } | Working::Rule { .. } => {
            let shown = quantity.shown();
            if shown.chars().count() <= LONGEST || quantity.rule().is_empty() {
                shown
            } else {
                let rule = quantity.rule();
                rule.split(';').next().unwrap_or(rule).to_owned()
            }
        }
    }
}

/// A class as the head of its lines.
pub(super) const fn heading(class: Class) -> &'static str {
    match class {
        Class::Material => "Materials",
        Class::Labor => "Labor",
        Class::Equipment => "Equipment",
        Class::Disposal => "Disposal",
        Class::Subcontract => "Subcontracts",
        Class::Fee => "Fees",
    }
}
