//! Price books in plain text: how two differ, and what in one is worth a second look.

use crate::documents::table::Align::{Left, Point};
use crate::documents::table::table;
use crate::input::book::PriceBook;
use crate::input::book::diff::{Difference, ItemDifference};
use crate::input::book::faults::Fault;
use crate::values::{Day, Percent, UnitPrice, rounding};

/// Below a table with a price that has moved far.
pub(super) const LOOK_AGAIN: &str =
    "look again: moved by more than a half, which is more often a slip than a price.";

/// One line an item that is not the same.
pub fn differences(old: &PriceBook, new: &PriceBook, day: Day, found: &[ItemDifference]) -> String {
    let mut out = vec![
        format!("{} and {}, listed prices of {day}", old.name, new.name),
        String::new(),
    ];
    if found.is_empty() {
        out.push("No item differs.".to_owned());
    }
    let rows: Vec<Vec<String>> = found.iter().map(|one| row(&one.item, &one.what)).collect();
    out.extend(table(&[Left, Point, Point, Point, Left], &rows));
    if found.iter().any(|one| one.what.is_jump()) {
        out.extend([String::new(), LOOK_AGAIN.to_owned()]);
    }
    out.join("\n") + "\n"
}

/// Its name, both prices, the change, and a word about it.
pub(super) fn row(item: &str, what: &Difference) -> Vec<String> {
    let mut by = None;
    let (old, new, words) = match what {
        Difference::Price {
            old,
            new,
            unit,
            by: moved,
        } => {
            by = *moved;
            let again = if what.is_jump() { "; look again" } else { "" };
            (Some(old), Some(new), format!("a {}{again}", unit.symbol()))
        }
        Difference::Unit { old, new } => {
            let (was, is) = (old.1.symbol(), new.1.symbol());
            let words = format!("was by the {was}, now by the {is}; not compared");
            (Some(&old.0), Some(&new.0), words)
        }
        Difference::Added(price, unit) => {
            (None, Some(price), format!("a {}; added", unit.symbol()))
        }
        Difference::Gone(None) => (None, None, "gone".to_owned()),
        Difference::Gone(Some(near)) => (None, None, format!("gone; the new book has `{near}`")),
        Difference::NoPrice { in_new } => {
            let which = if *in_new { "new" } else { "old" };
            (
                None,
                None,
                format!("no price on this day in the {which} book"),
            )
        }
    };
    let price = |price: Option<&UnitPrice>| price.map(UnitPrice::to_string).unwrap_or_default();
    let by = by.map(change).unwrap_or_default();
    vec![item.to_owned(), price(old), price(new), by, words]
}

/// `+6.5%`, to a tenth for reading.
pub fn change(by: Percent) -> String {
    let shown = rounding::with_places(by.number(), 1);
    let sign = if by.number().is_sign_negative() {
        ""
    } else {
        "+"
    };
    format!("{sign}{shown}%")
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
