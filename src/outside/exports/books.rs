//! `flatwork cost` with several books, for other programs: every line in each, and why they differ.

use serde_json::{Value, json};

use super::money;
use super::table::{Cell, head, or_nothing, written};
use crate::costing::{Cause, Change, Joined};
use crate::documents::views::office::books::{difference, joined};
use crate::documents::views::office::{Sheet, cause, side};
use crate::input::book::Class;
use crate::values::Money;

/// The comparison as JSON, indented, ending in a line break.
pub fn json(sheets: &[Sheet<'_>]) -> String {
    let books: Vec<Value> = sheets
        .iter()
        .map(|sheet| {
            json!({
                "book": sheet.book.name,
                "file": sheet.sources.name(sheet.book.place.file),
                "totals": super::cost::totals(&sheet.offer.quoted().totals()),
            })
        })
        .collect();
    let lines: Vec<Value> = joined(sheets).iter().map(line).collect();
    let differences: Vec<Value> = sheets
        .iter()
        .skip(1)
        .map(|other| {
            let found = difference(&sheets[0], other);
            json!({
                "book": other.book.name,
                "prices": changes(&found.prices),
                "rules": changes(&found.rules),
                "added": changes(&found.added),
            })
        })
        .collect();
    let value = json!({
        "job": sheets[0].takeoff.name,
        "customer": sheets[0].takeoff.customer.name,
        "quoted": sheets[0].quoted.to_string(),
        "books": books,
        "lines": lines,
        "differences": differences,
    });
    format!("{value:#}\n")
}

fn line(line: &Joined) -> Value {
    let amounts: Vec<Value> = line.amounts.iter().map(|amount| money(*amount)).collect();
    json!({
        "cause": cause(&line.cause),
        "title": line.title,
        "class": line.class.map(Class::name),
        "side": side(line.side),
        "amounts": amounts,
    })
}

fn changes(changes: &[Change]) -> Vec<Value> {
    let change = |change: &Change| {
        json!({
            "cause": cause(&change.cause),
            "title": change.title,
            "from": money(change.old),
            "to": money(change.new),
            "by": money(change.by()),
        })
    };
    changes.iter().map(change).collect()
}

/// The lines as CSV: an amount for each book, and for each further book what its prices,
/// its rules and what follows from them change in that line.
pub fn csv(sheets: &[Sheet<'_>]) -> String {
    let mut names = head(&["cause", "title", "class", "side"]);
    names.extend((1..=sheets.len()).map(|i| format!("amount_{i}")));
    for i in 2..=sheets.len() {
        names.extend(["prices", "rules", "added", "difference"].map(|what| format!("{what}_{i}")));
    }
    let found: Vec<_> = sheets
        .iter()
        .skip(1)
        .map(|other| difference(&sheets[0], other))
        .collect();
    let rows = joined(sheets).into_iter().map(|line| {
        let mut row = vec![
            Cell::text(cause(&line.cause)),
            Cell::text(line.title),
            or_nothing(line.class, |class| Cell::text(class.name())),
            Cell::text(side(line.side)),
        ];
        row.extend(line.amounts.iter().map(|amount| Cell::money(*amount)));
        for (books, amount) in found.iter().zip(line.amounts.iter().skip(1)) {
            for changes in [&books.prices, &books.rules, &books.added] {
                row.push(Cell::money(by(changes, &line.cause)));
            }
            row.push(Cell::money(*amount - line.amounts[0]));
        }
        row
    });
    written(&names, rows.collect())
}

fn by(changes: &[Change], cause: &Cause) -> Money {
    let of_cause = changes.iter().filter(|change| change.cause == *cause);
    of_cause.map(Change::by).sum()
}
