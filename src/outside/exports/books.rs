//! `flatwork cost` with several books, for other programs: every line in each, and why they differ.

use serde_json::{Value, json};

use super::money;
use crate::costing::{Books, Cause, CauseChange, Joined};
use crate::documents::column::{self, Column, Columns, Reader};
use crate::documents::views::office::books::{difference, joined};
use crate::documents::views::office::{Sheet, cause, side};
use crate::input::book::Class;
use crate::values::Money;

/// The comparison as JSON, indented, ending in a line break.
pub fn json(sheets: &[Sheet<'_>]) -> String {
    let books = sheets.iter().map(|sheet| {
        json!({
            "book": sheet.book.name,
            "file": sheet.sources.name(sheet.book.place.file),
            "totals": super::cost::totals(&sheet.offer.quoted().totals()),
        })
    });
    let columns = columns(&[]);
    let lines = joined(sheets).into_iter().map(|line| {
        let mut value = columns.object(&line);
        value["amounts"] = line.amounts.iter().copied().map(money).collect();
        value
    });
    let differences = sheets.iter().skip(1).map(|other| {
        let found = difference(&sheets[0], other);
        json!({
            "book": other.book.name,
            "prices": changes(&found.prices),
            "rules": changes(&found.rules),
            "added": changes(&found.added),
        })
    });
    column::json(&json!({
        "job": sheets[0].takeoff.name,
        "customer": sheets[0].takeoff.customer.name,
        "quoted": sheets[0].quoted.to_string(),
        "books": books.collect::<Vec<_>>(),
        "lines": lines.collect::<Vec<_>>(),
        "differences": differences.collect::<Vec<_>>(),
    }))
}

fn changes(changes: &[CauseChange]) -> Value {
    let change = |change: &CauseChange| {
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
    let others = sheets.iter().skip(1);
    let found: Vec<Books> = others.map(|other| difference(&sheets[0], other)).collect();
    columns(&found).csv(&joined(sheets))
}

/// `others` are the books after the first, by how they differ from it.
fn columns<'a>(others: &'a [Books]) -> Columns<'a, Joined<'a>> {
    type Of<'a> = Column<'a, Joined<'a>>;
    const CSV: &[Reader] = &[Reader::Csv];
    let mut columns = vec![
        Of::left("cause", |line| cause(&line.cause)),
        Of::left("title", |line| line.title),
        Of::left("class", |line| line.class.map(Class::name)),
        Of::left("side", |line| side(line.side)),
    ];
    for i in 0..=others.len() {
        columns.push(Of::right(format!("amount_{}", i + 1), move |line| line.amounts[i]).only(CSV));
    }
    for (i, books) in (1..).zip(others) {
        let changes = [
            ("prices", &books.prices),
            ("rules", &books.rules),
            ("added", &books.added),
        ];
        for (what, changes) in changes {
            let by = |line: &Joined<'a>| by(changes, &line.cause);
            columns.push(Of::right(format!("{what}_{}", i + 1), by).only(CSV));
        }
        let difference = move |line: &Joined<'a>| line.amounts[i] - line.amounts[0];
        columns.push(Of::right(format!("difference_{}", i + 1), difference).only(CSV));
    }
    Columns(columns)
}

fn by(changes: &[CauseChange], cause: &Cause) -> Money {
    let of_cause = changes.iter().filter(|change| change.cause == *cause);
    of_cause.map(CauseChange::by).sum()
}
