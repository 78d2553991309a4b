//! Price books in plain text: how two differ, and what in one is worth a second look.

use crate::documents::table::{Align, table};
use crate::input::book::PriceBook;
use crate::input::book::diff::{Difference, What};
use crate::input::book::faults::Fault;
use crate::values::{Day, Percent, rounding};

/// Below a table with a price that has moved far.
pub(super) const LOOK_AGAIN: &str =
    "look again: moved by more than a half, which is more often a slip than a price.";

/// One line an item that is not the same.
pub fn differences(old: &PriceBook, new: &PriceBook, day: Day, found: &[Difference]) -> String {
    let mut out = vec![
        format!("{} and {}, listed prices of {day}", old.name, new.name),
        String::new(),
    ];
    if found.is_empty() {
        out.push("No item differs.".to_owned());
    }
    let rows: Vec<Vec<String>> = found.iter().map(row).collect();
    out.extend(table(
        &[
            Align::Left,
            Align::Point,
            Align::Point,
            Align::Point,
            Align::Left,
        ],
        &rows,
    ));
    let jumps = found.iter().filter(|one| one.what.is_jump()).count();
    if jumps != 0 {
        out.extend([String::new(), LOOK_AGAIN.to_owned()]);
    }
    out.join("\n") + "\n"
}

/// Its name, both prices, the change, and a word about it.
pub(super) fn row(one: &Difference) -> Vec<String> {
    let (old, new, by, words) = match &one.what {
        What::Price { old, new, unit, by } => (
            old.to_string(),
            new.to_string(),
            by.map_or_else(String::new, change),
            format!(
                "a {}{}",
                unit.symbol(),
                if one.what.is_jump() {
                    "; look again"
                } else {
                    ""
                }
            ),
        ),
        What::Unit { old, new } => (
            old.0.to_string(),
            new.0.to_string(),
            String::new(),
            format!(
                "was by the {}, now by the {}; not compared",
                old.1.symbol(),
                new.1.symbol()
            ),
        ),
        What::Added(price, unit) => (
            String::new(),
            price.to_string(),
            String::new(),
            format!("a {}; added", unit.symbol()),
        ),
        What::Gone(near) => (
            String::new(),
            String::new(),
            String::new(),
            near.as_ref().map_or_else(
                || "gone".to_owned(),
                |near| format!("gone; the new book has `{near}`"),
            ),
        ),
        What::NoPrice { in_new } => (
            String::new(),
            String::new(),
            String::new(),
            if *in_new {
                "no price on this day in the new book".to_owned()
            } else {
                "no price on this day in the old book".to_owned()
            },
        ),
    };
    vec![one.item.clone(), old, new, by, words]
}

/// `+6.5%`, to a tenth for reading.
pub fn change(by: Percent) -> String {
    let shown = rounding::with_places(rounding::to_places(by.number(), 1), 1);
    if by.number().is_sign_negative() {
        format!("{shown}%")
    } else {
        format!("+{shown}%")
    }
}

/// One sentence a fault.
pub fn faults(book: &PriceBook, day: Day, found: &[Fault]) -> String {
    let mut out = vec![format!("{}, looked at for {day}", book.name), String::new()];
    if found.is_empty() {
        out.push("Nothing to look at.".to_owned());
    }
    out.extend(found.iter().map(sentence));
    out.join("\n") + "\n"
}

fn sentence(fault: &Fault) -> String {
    match fault {
        Fault::NoPrice(item) => format!("{item}: no price has begun by this day"),
        Fault::Free(item) => format!("{item}: the price is nothing"),
        Fault::Old(item, from) => {
            format!("{item}: the price is from {from}, more than a year old; ask for a new one")
        }
        Fault::Unused(item) => {
            format!("{item}: no rule of the book buys it; only a takeoff that names it does")
        }
        Fault::BookPast(until) => format!("the whole book was good until {until}"),
        Fault::HoldPast(item, until) => format!("{item}: the hold ended on {until}"),
        Fault::HoldsOverlap(item, until) => {
            format!("{item}: two holds cover {until}; the later one in the book counts")
        }
    }
}
