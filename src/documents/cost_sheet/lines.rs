//! Lines of direct cost: what to order, and why so much.

use crate::costing::LineItem;
use crate::documents::views::cost::OrderRow;
use crate::documents::views::office::takeoff::substance;
use crate::documents::views::office::{
    Sheet, cause, group_of, line_told_apart, numbered, two_places, unit,
};
use crate::input::book::{Class, CostGroup};
use crate::trade::{Quantity, Working};

/// A working longer than this says its rule instead; `explain` has it whole.
const LONGEST: usize = 78;

/// Group by group, each named once.
pub(super) fn lines(sheet: &Sheet<'_>) -> Vec<OrderRow> {
    let all = numbered(&sheet.offer.quoted().lines).into_iter();
    let direct: Vec<&LineItem> = all
        .map(|(_, line)| line)
        .filter(|line| line.class.is_some())
        .collect();
    let titles = || direct.iter().map(|line| line.title.as_str());
    let mut rows = Vec::new();
    let mut before = None;
    for line in &direct {
        let group = group_of(line);
        let first = before != group;
        let told = line_told_apart(line, titles());
        rows.push(OrderRow {
            kind: if first && before.is_some() {
                "group"
            } else {
                "plain"
            },
            class: group
                .as_ref()
                .filter(|_| first)
                .map(heading)
                .unwrap_or_default(),
            item: match (told, line.class) {
                // One wage, many tasks: the task says it.
                (Some(_), Some(Class::Labor)) => cause(&line.cause),
                (told, _) => told.unwrap_or_else(|| line.title.clone()),
            },
            ..row(line)
        });
        before = group;
    }
    rows
}

fn row(line: &LineItem) -> OrderRow {
    let quantity = line.quantity.as_ref();
    let amount = quantity.map(Quantity::amount);
    let price = line.price.as_ref().map(|dated| dated.price.to_string());
    OrderRow {
        working: quantity.map_or_else(|| line.amount.shown(), working),
        quantity: amount
            .map(|one| two_places(one).number())
            .unwrap_or_default(),
        unit: amount.map(unit).unwrap_or_default(),
        price: price.unwrap_or_default(),
        amount: line.money().plain(),
        ..OrderRow::default()
    }
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

/// A group as the head of its lines.
pub(super) fn heading(group: &CostGroup) -> String {
    let class = match group {
        CostGroup::Class(class) => *class,
        CostGroup::Own { name, .. } => return name.clone(),
    };
    match class {
        Class::Material => "Materials",
        Class::Labor => "Labor",
        Class::Equipment => "Equipment",
        Class::Disposal => "Disposal",
        Class::Subcontract => "Subcontracts",
        Class::Fee => "Fees",
    }
    .to_owned()
}
