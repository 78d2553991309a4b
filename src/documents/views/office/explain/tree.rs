//! A quantity and all it is made of, indented, each quantity once.

use std::collections::BTreeSet;

use crate::costing::Priced;
use crate::documents::views::office::{Sheet, numbered, wrap::wrapped};
use crate::input::book::Basis;
use crate::reading::Place;
use crate::trade::{Quantity, Working};

/// What makes two quantities the same to a reader: name, amount, working, and where it was written.
type Told = (String, String, String, Option<Place>);

/// The trees of `roots`, which belong to this estimate.
pub(super) fn trees(sheet: &Sheet<'_>, priced: &Priced, roots: &[Quantity]) -> String {
    let (mut lines, mut told) = (Vec::new(), BTreeSet::new());
    for root in roots {
        branch((sheet, priced), root, 0, &mut told, &mut lines);
    }
    lines.join("\n") + "\n"
}

fn branch(
    of: (&Sheet<'_>, &Priced),
    quantity: &Quantity,
    depth: usize,
    told: &mut BTreeSet<Told>,
    lines: &mut Vec<String>,
) {
    let key = (
        quantity.name().to_owned(),
        quantity.amount().to_string(),
        quantity.shown(),
        quantity.place(),
    );
    if !told.insert(key) {
        return;
    }
    // Nothing is made of nothing: a sum without parts needs no line.
    if quantity.value().is_zero() && depth != 0 && quantity.shown() == "0" {
        return;
    }
    let indent = "  ".repeat(depth);
    let (name, amount) = (named(of.1, quantity), quantity.amount());
    let text = match quantity.working() {
        Working::Given(_) | Working::Shape { .. } | Working::Set { .. } => {
            format!("{name} = {amount}: {}", of.0.working(quantity))
        }
        // What only passes another quantity on does not say its amount twice.
        Working::Rule { rule, .. } if quantity.shown() == amount.to_string() => {
            format!("{name} = {amount}  [{rule}]")
        }
        Working::Plan { .. } | Working::Rule { .. } => {
            format!("{name} = {amount} = {}", of.0.working(quantity))
        }
    };
    lines.extend(wrapped(&indent, &format!("{indent}    "), &text));
    for part in quantity.parts() {
        branch(of, &part, depth + 1, told, lines);
    }
}

/// A line of the cost by its number and title, a price by its day, anything else by its name.
fn named(priced: &Priced, quantity: &Quantity) -> String {
    let lines = numbered(&priced.lines);
    if let Some((number, line)) = lines.iter().find(|(_, line)| line.amount.is(quantity)) {
        return format!("#{number} {}", line.title);
    }
    let dated = lines.iter().find_map(|(_, line)| {
        line.price
            .as_ref()
            .filter(|dated| quantity.place() == Some(dated.place))
    });
    match dated.map(|dated| (&dated.basis, dated.from)) {
        Some((Basis::Listed, from)) => format!("price since {from}"),
        Some((Basis::Held { until, .. }, _)) => format!("price held until {until}"),
        None => quantity.name().to_owned(),
    }
}
