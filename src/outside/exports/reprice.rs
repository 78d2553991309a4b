//! Re-priced quotes for other programs.

use serde_json::{Value, json};

use super::table::{Cell, or_nothing, written};
use super::{decimal, money};
use crate::costing::Room;
use crate::documents::views::office::reprice::{Answer, Row, causes, exposure};
use crate::values::Day;

/// Everything, the most harm first.
pub fn json(answer: &Answer, today: Day) -> String {
    let rows = answer.rows(today);
    let quotes: Vec<Value> = rows.iter().map(quote).collect();
    let left_out: Vec<Value> = answer
        .left_out()
        .into_iter()
        .map(|(number, because)| json!({"number": number, "because": because}))
        .collect();
    let whole = json!({
        "asked on": today.to_string(),
        "open quotes cost more by": money(exposure(&rows, true)),
        "signed work costs more by": money(exposure(&rows, false)),
        "quotes": quotes,
        "left out": left_out,
    });
    format!("{whole:#}\n")
}

fn quote(row: &Row<'_>) -> Value {
    let found = row.found;
    let causes: Vec<Value> = causes(found)
        .map(|(group, change)| {
            json!({
                "group": group,
                "title": change.title,
                "class": change.class.map(crate::input::book::Class::name),
                "by": money(change.by()),
            })
        })
        .collect();
    let rooms: Vec<Value> = found
        .rooms
        .iter()
        .map(|one| {
            json!({
                "item": one.item,
                "to the floor": room(one.to_floor),
                "to no profit": room(one.to_zero),
            })
        })
        .collect();
    json!({
        "number": row.quote.number,
        "customer": row.quote.customer,
        "state": row.quote.standing.word(),
        "quoted": row.quote.quoted.to_string(),
        "good until": row.quote.good_until.to_string(),
        "age": row.age,
        "days left": row.days_left,
        "old cost": money(found.old.cost),
        "new cost": money(found.new.cost),
        "old price": money(found.old.price),
        "new price": money(found.new.price),
        "old total": money(found.old.total),
        "new total": money(found.new.total),
        "margin held": found.margin_held().map(decimal),
        "verdict": row.verdict,
        "notes": row.quote.notes,
        "causes": causes,
        "room": rooms,
    })
}

/// The last price that still stands; null where there is no such price.
fn room(room: Room) -> Value {
    match room {
        Room::UpTo { price, .. } => decimal(price.dollars()),
        Room::Far | Room::None => Value::Null,
    }
}

/// One line a quote, without its causes.
pub fn csv(answer: &Answer, today: Day) -> String {
    let head = [
        "number",
        "customer",
        "state",
        "quoted",
        "good until",
        "age",
        "days left",
        "old cost",
        "new cost",
        "old price",
        "new price",
        "margin held",
        "verdict",
    ];
    let lines = answer.rows(today).into_iter().map(|row| {
        let found = row.found;
        vec![
            Cell::text(&row.quote.number),
            Cell::text(&row.quote.customer),
            Cell::text(row.quote.standing.word()),
            Cell::text(row.quote.quoted.to_string()),
            Cell::text(row.quote.good_until.to_string()),
            Cell::Number(row.age.to_string()),
            Cell::Number(row.days_left.to_string()),
            Cell::money(found.old.cost),
            Cell::money(found.new.cost),
            Cell::money(found.old.price),
            Cell::money(found.new.price),
            or_nothing(found.margin_held(), Cell::decimal),
            Cell::text(row.verdict.as_ref()),
        ]
    });
    written(&head.map(str::to_owned), lines.collect())
}
