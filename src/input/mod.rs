//! What the owner writes: the business, the price book, the job.
//!
//! Every reader walks a tree that knows its places and reports every problem it
//! meets; what could not be read is left out, so one bad value costs one value.

pub mod book;
pub mod business;
pub mod change;
pub mod job;
mod kinds;
pub mod phrases;
pub mod progress;
pub mod site;

use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::{Amount, Unit};

/// Accepts `format: 1`, and says what to do with a file of another format.
fn format_one(fields: &Fields<'_>, problems: &mut Problems) {
    if let Some(format) = fields.read::<String>("format", problems)
        && format.value != "1"
    {
        let message = format!("this program reads format 1, not `{}`", format.value);
        problems.push(
            Problem::new("unknown-format", message)
                .at(format.place)
                .help("write `format: 1`, or use a newer program"),
        );
    }
}

/// A list of items that each have one name: `- sod repair: 120 sq ft`.
fn named_items<'a>(
    node: &'a Node,
    what: &str,
    problems: &mut Problems,
) -> Vec<(At<String>, &'a Node)> {
    let mut found = Vec::new();
    for item in node.items(what, problems) {
        let entries = item.entries(&format!("each line of {what}"), problems);
        match entries[..] {
            [entry] => found.push((
                At {
                    value: entry.key.clone(),
                    place: entry.key_place,
                },
                &entry.node,
            )),
            [] => {}
            _ => {
                let message = format!(
                    "each line of {what} has one name, and here are {}",
                    entries.len()
                );
                problems.push(Problem::new("not-one-name", message).at(entries[1].key_place).help("start a new line with a dash, or indent what belongs to the first name"));
            }
        }
    }
    found
}

fn expect_unit(
    amount: At<Amount>,
    unit: Unit,
    what: &str,
    problems: &mut Problems,
) -> Option<At<Amount>> {
    if amount.value.unit == unit {
        return Some(amount);
    }
    let (found, wanted) = (amount.value.unit.symbol(), unit.symbol());
    let (message, help) = match (amount.value.unit, unit) {
        (Unit::Plain, _) => (
            format!("`{what}` has no unit"),
            format!(
                "write it in {wanted}, for example `{} {wanted}`",
                amount.value.number()
            ),
        ),
        (_, Unit::Plain) => (
            format!("`{what}` is a plain number, not in {found}"),
            format!("write `{}`", amount.value.number()),
        ),
        _ => (
            format!("`{what}` is in {wanted}, not in {found}"),
            format!("convert it, and write it in {wanted}"),
        ),
    };
    problems.push(
        Problem::new("wrong-unit", message)
            .at(amount.place)
            .help(help),
    );
    None
}
