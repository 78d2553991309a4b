//! `flatwork takeoff` for other programs: every quantity with its working and its places,
//! and every slab as it is laid out.

use serde_json::{Value, json};

use crate::documents::column::{self, Cell, Column, Columns, Reader};
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
        "slabs": super::layout::slabs(sheet),
    });
    column::json(&value)
}

/// The quantities as CSV, by the same names as in JSON; `part` and `title` are their group's.
pub fn csv(sheet: &Sheet<'_>) -> String {
    let groups = groups(sheet);
    let rows: Vec<(&Group, &Quantity)> = groups
        .iter()
        .flat_map(|group| group.quantities.iter().map(move |one| (group, one)))
        .collect();
    columns(sheet).csv(&rows)
}

fn columns<'a>(sheet: &'a Sheet<'_>) -> Columns<'a, (&'a Group, &'a Quantity)> {
    type Of<'a> = Column<'a, (&'a Group, &'a Quantity)>;
    Columns(vec![
        Of::left("part", |(group, _)| group.part).only(&[Reader::Csv]),
        Of::left("title", |(group, _)| group.title.as_str()).only(&[Reader::Csv]),
        Of::left("name", |(_, one)| one.name()),
        Of::right("amount", |(_, one)| Cell::quantity(one.value())),
        Of::left("unit", |(_, one)| one.amount().unit.symbol()),
        Of::left("working", |(_, one)| one.shown()),
        Of::left("rule", |(_, one)| one.rule()),
        Of::left("at", |(_, one)| Some(sheet.line_of(one.place()?))),
    ])
}

fn group(sheet: &Sheet<'_>, group: &Group) -> Value {
    let columns = columns(sheet);
    let quantities = group.quantities.iter().map(|one| {
        let mut value = columns.object(&(group, one));
        value["given"] = one
            .parts()
            .iter()
            .filter_map(|part| given(sheet, part))
            .collect();
        value
    });
    json!({
        "part": group.part,
        "title": group.title,
        "quantities": quantities.collect::<Vec<_>>(),
        "notes": group.notes,
    })
}

/// A figure that somebody wrote.
fn given(sheet: &Sheet<'_>, part: &Quantity) -> Option<Value> {
    Some(json!({
        "name": part.name(),
        "amount": super::quantity(part.value()),
        "unit": part.amount().unit.symbol(),
        "at": sheet.line_of(part.place()?),
    }))
}
