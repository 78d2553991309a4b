//! `flatwork cost` for other programs: the lines, the totals they make, every choice.

use serde_json::{Value, json};

use super::table::{Cell, head, or_nothing, written};
use super::{decimal, money};
use crate::costing::{LineItem, Totals, schedule, sections};
use crate::documents::views::office::{Sheet, cause, every, numbered, side};
use crate::input::book::{Basis, Dated};
use crate::trade::Working;
use crate::trade::crew::StageHours;

/// The cost sheet as JSON, indented, ending in a line break.
pub fn json(sheet: &Sheet<'_>) -> String {
    let quoted = sheet.offer.quoted();
    let lines: Vec<Value> = numbered(&quoted.lines)
        .into_iter()
        .map(|(number, one)| line(number, one))
        .collect();
    let value = json!({
        "job": sheet.takeoff.name,
        "customer": sheet.takeoff.customer.name,
        "quoted": sheet.quoted.to_string(),
        "book": sheet.book.name,
        "pours": sheet.days.iter().map(|prices| prices.day.to_string()).collect::<Vec<_>>(),
        "lines": lines,
        "totals": totals(&quoted.totals()),
        "margin_floor": decimal(sheet.business.price.margin_floor.value.number()),
        "crew": crew(sheet),
        "sections": split(sheet),
        "combinations": combinations(sheet),
        "payments": payments(sheet),
        "set": set(sheet),
    });
    format!("{value:#}\n")
}

/// The lines as CSV, by the same names as in JSON.
pub fn csv(sheet: &Sheet<'_>) -> String {
    let names = head(&[
        "number",
        "cause",
        "title",
        "class",
        "side",
        "quantity",
        "unit",
        "price",
        "price_from",
        "held_until",
        "amount",
        "working",
    ]);
    let rows = numbered(&sheet.offer.quoted().lines)
        .into_iter()
        .map(|(number, line)| {
            let quantity = line.quantity.as_ref();
            let price = line.price.as_ref();
            vec![
                Cell::count(number),
                Cell::text(cause(&line.cause)),
                Cell::text(line.title.as_str()),
                or_nothing(line.class, |class| Cell::text(class.name())),
                Cell::text(side(line.side)),
                or_nothing(quantity, |quantity| Cell::decimal(quantity.value())),
                or_nothing(quantity, |quantity| {
                    Cell::text(quantity.amount().unit.symbol())
                }),
                or_nothing(price, |dated| {
                    Cell::Number(dated.price.dollars().to_string())
                }),
                or_nothing(price, |dated| Cell::text(dated.from.to_string())),
                or_nothing(price.and_then(held_until), Cell::text),
                Cell::money(line.money()),
                Cell::text(line.amount.shown()),
            ]
        });
    written(&names, rows.collect())
}

fn held_until(dated: &Dated) -> Option<String> {
    match &dated.basis {
        Basis::Held { until, .. } => Some(until.to_string()),
        Basis::Listed => None,
    }
}

fn line(number: usize, line: &LineItem) -> Value {
    let quantity = line.quantity.as_ref();
    let held = line.price.as_ref().and_then(held_until);
    json!({
        "number": number,
        "cause": cause(&line.cause),
        "title": line.title,
        "class": line.class.map(crate::input::book::Class::name),
        "side": side(line.side),
        "quantity": quantity.map(|quantity| decimal(quantity.value())),
        "unit": quantity.map(|quantity| quantity.amount().unit.symbol()),
        "price": line.price.as_ref().map(|dated| dated.price.dollars().to_string()),
        "price_from": line.price.as_ref().map(|dated| dated.from.to_string()),
        "held_until": held,
        "amount": money(line.money()),
        "working": line.amount.shown(),
    })
}

pub(super) fn totals(totals: &Totals) -> Value {
    json!({
        "direct": money(totals.direct),
        "cost": money(totals.cost),
        "price": money(totals.price),
        "tax": money(totals.tax),
        "total": money(totals.total),
        "margin": totals.margin().map(decimal),
    })
}

fn crew(sheet: &Sheet<'_>) -> Value {
    let crew = &sheet.offer.quoted().needs.crew;
    json!({
        "hours_worked": decimal(crew.worked.value()),
        "travel_hours": decimal(crew.travel.value()),
        "set_up_hours": crew.set_up.as_ref().map(|hours| decimal(hours.value())),
        "hours": decimal(crew.hours.value()),
        "hours_charged": decimal(crew.charged.value()),
        "crew_days": decimal(crew.days.value()),
        "trips": decimal(crew.trips.value()),
        "stages": crew.stages.iter().map(stage).collect::<Vec<_>>(),
    })
}

fn stage(one: &StageHours) -> Value {
    json!({
        "stage": one.stage.name(),
        "hours_worked": decimal(one.worked.value()),
        "crew_days": one.days.as_ref().map(|days| decimal(days.value())),
    })
}

fn split(sheet: &Sheet<'_>) -> Vec<Value> {
    sections(&sheet.offer.quoted().lines)
        .into_iter()
        .map(|part| json!({"section": sheet.section(part.section), "price": money(part.price)}))
        .collect()
}

fn combinations(sheet: &Sheet<'_>) -> Vec<Value> {
    let by_choice = sheet.offer.by_choice.iter();
    by_choice
        .map(|(choice, priced)| {
            let totals = priced.totals();
            json!({
                "choice": choice.0,
                "taken": sheet.taken(choice),
                "direct": money(totals.direct),
                "cost": money(totals.cost),
                "price": money(totals.price),
                "tax": money(totals.tax),
                "total": money(totals.total),
                "margin": totals.margin().map(decimal),
            })
        })
        .collect()
}

fn payments(sheet: &Sheet<'_>) -> Vec<Value> {
    let payments = &sheet.business.payments;
    let parts = schedule(sheet.offer.quoted().totals().total, payments);
    payments
        .iter()
        .zip(parts)
        .map(|(payment, part)| json!({"when": payment.when, "amount": money(part)}))
        .collect()
}

fn set(sheet: &Sheet<'_>) -> Vec<Value> {
    let mut out = Vec::new();
    for quantity in every(sheet.offer.quoted()) {
        if let Working::Set {
            computed, because, ..
        } = quantity.working()
        {
            out.push(json!({
                "name": quantity.name(),
                "set_to": decimal(quantity.value()),
                "computed": decimal(computed.value()),
                "unit": quantity.amount().unit.symbol(),
                "because": because,
            }));
        }
    }
    out
}
