//! `flatwork takeoff` for other programs: every quantity with its working and its places.

use serde_json::{Value, json};

use super::decimal;
use super::table::{Cell, head, or_nothing, written};
use crate::documents::views::office::Sheet;
use crate::documents::views::office::takeoff::{Group, groups};
use crate::trade::Quantity;

/// The quantities as JSON, indented, ending in a line break.
pub fn json(sheet: &Sheet<'_>) -> String {
    let groups: Vec<Value> = groups(sheet).iter().map(|one| group(sheet, one)).collect();
    let value = json!({
        "job": sheet.takeoff.name,
        "customer": sheet.takeoff.customer.name,
        "groups": groups,
    });
    format!("{value:#}\n")
}

/// The quantities as CSV, by the same names as in JSON; `part` and `title` are their group's.
pub fn csv(sheet: &Sheet<'_>) -> String {
    let names = head(&[
        "part", "title", "name", "amount", "unit", "working", "rule", "at",
    ]);
    let groups = groups(sheet);
    let rows = groups.iter().flat_map(|group| {
        group.quantities.iter().map(|quantity| {
            vec![
                Cell::text(group.part),
                Cell::text(group.title.as_str()),
                Cell::text(quantity.name()),
                Cell::decimal(quantity.value()),
                Cell::text(quantity.amount().unit.symbol()),
                Cell::text(quantity.shown()),
                Cell::text(quantity.rule()),
                or_nothing(quantity.place(), |place| Cell::text(sheet.line_of(place))),
            ]
        })
    });
    written(&names, rows.collect())
}

fn group(sheet: &Sheet<'_>, group: &Group) -> Value {
    let quantities: Vec<Value> = group
        .quantities
        .iter()
        .map(|one| quantity(sheet, one))
        .collect();
    json!({
        "part": group.part,
        "title": group.title,
        "quantities": quantities,
        "notes": group.notes,
    })
}

fn quantity(sheet: &Sheet<'_>, quantity: &Quantity) -> Value {
    let given: Vec<Value> = quantity
        .parts()
        .iter()
        .filter_map(|part| {
            Some(json!({
                "name": part.name(),
                "amount": decimal(part.value()),
                "unit": part.amount().unit.symbol(),
                "at": sheet.line_of(part.place()?),
            }))
        })
        .collect();
    json!({
        "name": quantity.name(),
        "amount": decimal(quantity.value()),
        "unit": quantity.amount().unit.symbol(),
        "working": quantity.shown(),
        "rule": quantity.rule(),
        "at": quantity.place().map(|place| sheet.line_of(place)),
        "given": given,
    })
}
