//! Every quantity of the job, part by part; with its working where that is asked for.

mod groups;
mod sections;
mod slab;

pub use groups::{Group, groups};

use super::wrap::wrapped;
use super::{Sheet, unit};
use crate::documents::table::{Align, table};
use crate::trade::{Quantity, Working};

/// The whole list; `explained` adds how each quantity came about.
pub fn text(sheet: &Sheet<'_>, explained: bool) -> String {
    let options = &sheet.takeoff.options;
    let options = match (sheet.chosen(), sheet.taken(&sheet.offer.as_quoted)) {
        (Some(chosen), _) => format!(" with {chosen}"),
        (None, _) if options.is_empty() => String::new(),
        (None, taken) if taken.is_empty() => " as quoted, without any option".to_owned(),
        (None, taken) => format!(" as quoted, with {}", taken.join(" + ")),
    };
    let mut out = vec![format!(
        "{}, for {}: every quantity{options}",
        sheet.takeoff.name, sheet.takeoff.customer.name
    )];
    let groups = groups(sheet);
    let rows: Vec<Vec<String>> = groups
        .iter()
        .flat_map(|group| &group.quantities)
        .map(row)
        .collect();
    let mut rows = table(&[Align::Left, Align::Point, Align::Left], &rows).into_iter();
    // What is ordered is also bought: its working is told the first time.
    let mut shown: Vec<&Quantity> = Vec::new();
    for group in &groups {
        out.extend([String::new(), group.title.to_uppercase()]);
        for quantity in &group.quantities {
            out.extend(rows.next().map(|row| format!("  {row}")));
            if explained && !shown.iter().any(|one| one.is(quantity)) {
                shown.push(quantity);
                out.extend(explanation(sheet, quantity));
            }
        }
        for note in &group.notes {
            out.extend(wrapped("  ", "    ", note));
        }
    }
    out.join("\n") + "\n"
}

fn row(quantity: &Quantity) -> Vec<String> {
    vec![
        quantity.name().to_owned(),
        quantity.amount().number(),
        unit(quantity.amount()),
    ]
}

/// The working, and line by line the figures in it that the owner wrote.
fn explanation(sheet: &Sheet<'_>, quantity: &Quantity) -> Vec<String> {
    let quantity = &substance(quantity);
    let sign = match quantity.working() {
        Working::Plan { .. } | Working::Rule { .. } => "      = ",
        Working::Given(_) | Working::Shape { .. } | Working::Set { .. } => "      ",
    };
    let mut out = wrapped(sign, "        ", &sheet.working(quantity));
    let mut given: Vec<(String, Vec<String>)> = Vec::new();
    for part in quantity.parts() {
        let Some(place) = part.place() else { continue };
        let (at, figure) = (
            sheet.line_of(place),
            format!("{} {}", part.name(), part.amount()),
        );
        match given.iter_mut().find(|(known, _)| *known == at) {
            Some((_, figures)) => figures.push(figure),
            None => given.push((at, vec![figure])),
        }
    }
    for (at, figures) in given {
        let text = format!("{at}: {}", figures.join(", "));
        out.extend(wrapped("        ", "          ", &text));
    }
    out
}

/// Behind a quantity that only passes another one on, that other one.
pub fn substance(quantity: &Quantity) -> Quantity {
    match (quantity.working(), &quantity.parts()[..]) {
        (Working::Rule { .. }, [part]) if part.amount() == quantity.amount() => substance(part),
        _ => quantity.clone(),
    }
}
