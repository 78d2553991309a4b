//! `flatwork cost` for other programs: the lines, the totals they make, every choice.

use serde_json::{Value, json};

use super::{money, quantity};
use crate::costing::{self, LineItem, Totals, schedule, sections};
use crate::documents::column::{self, Cell, Column, Columns};
use crate::documents::views::office::{Sheet, cause, numbered, side};
use crate::input::book::{Basis, Class};
use crate::trade::Quantity;
use crate::trade::crew::Crew;

/// The cost sheet as JSON, indented, ending in a line break.
pub fn json(sheet: &Sheet<'_>) -> String {
    let quoted = sheet.offer.quoted();
    let days = sheet.days.iter().map(|prices| prices.day.to_string());
    let floor = sheet.business.price.margin_floor.value.number();
    column::json(&json!({
        "job": sheet.takeoff.name,
        "customer": sheet.takeoff.customer.name,
        "quoted": sheet.quoted.to_string(),
        "book": sheet.book.name,
        "pours": days.collect::<Vec<_>>(),
        "lines": lines().objects(&numbered(&quoted.lines)),
        "totals": totals(&quoted.totals()),
        "margin_floor": Value::from(percent(floor)),
        "crew": crew(&quoted.needs.crew),
        "pour_days": pour_days(&quoted.needs.crew),
        "sections": split(sheet),
        "of_one": of_one(sheet),
        "combinations": combinations(sheet),
        "payments": payments(sheet),
        "set": set(sheet),
    }))
}

/// The lines as CSV.
pub fn csv(sheet: &Sheet<'_>) -> String {
    lines().csv(&numbered(&sheet.offer.quoted().lines))
}

fn lines<'a>() -> Columns<'a, (usize, &'a LineItem)> {
    type Of<'a> = Column<'a, (usize, &'a LineItem)>;
    Columns(vec![
        Of::right("number", |(number, _)| i64::try_from(*number).ok()),
        Of::left("cause", |(_, line)| cause(&line.cause)),
        Of::left("title", |(_, line)| line.title.as_str()),
        Of::left("class", |(_, line)| line.class.map(Class::name)),
        Of::left("group", |(_, line)| Some(line.group.as_ref()?.name())),
        Of::left("side", |(_, line)| side(line.side)),
        Of::right("quantity", |(_, line)| {
            let quantity = line.quantity.as_ref();
            quantity.map(|quantity| Cell::quantity(quantity.value()))
        }),
        Of::left("unit", |(_, line)| {
            let quantity = line.quantity.as_ref();
            quantity.map(|quantity| quantity.amount().unit.symbol())
        }),
        Of::right("price", |(_, line)| {
            Some(Cell::number(line.price.as_ref()?.price.dollars()))
        }),
        Of::left("price_from", |(_, line)| Some(line.price.as_ref()?.from)),
        Of::left("held_until", |(_, line)| {
            match &line.price.as_ref()?.basis {
                Basis::Held { until, .. } => Some(*until),
                Basis::Listed => None,
            }
        }),
        Of::right("amount", |(_, line)| line.money()),
        Of::left("working", |(_, line)| line.amount.shown()),
    ])
}

fn percent(number: rust_decimal::Decimal) -> Cell {
    Cell::percent(number, 2, String::new())
}

pub(super) fn totals(totals: &Totals) -> Value {
    json!({
        "direct": money(totals.direct),
        "cost": money(totals.cost),
        "price": money(totals.price),
        "tax": money(totals.tax),
        "total": money(totals.total),
        "margin": Value::from(Cell::from(totals.margin().map(percent))),
    })
}

fn crew(crew: &Crew) -> Value {
    let value = |one: &Quantity| quantity(one.value());
    let stages = crew.stretches.iter().map(|one| {
        json!({
            "stage": one.name,
            "hours_worked": value(&one.worked),
            "people": one.trips.as_ref().map(|_| value(one.people.as_ref().unwrap_or(&crew.people))),
            "trips": one.trips.as_ref().map(value),
            "crew_days": one.days.as_ref().map(value),
        })
    });
    json!({
        "hours_worked": value(&crew.worked),
        "travel_hours": value(&crew.travel),
        "set_up_hours": crew.set_up.as_ref().map(value),
        "waiting_hours": crew.waiting.as_ref().map(value),
        "hours": value(&crew.hours),
        "hours_charged": value(&crew.charged),
        "crew_days": value(&crew.days),
        "trips": value(&crew.trips),
        "stages": stages.collect::<Vec<_>>(),
    })
}

/// The day of each pour, beside what trucks, setting and the crew allow.
fn pour_days(crew: &Crew) -> Value {
    let value = |one: &Quantity| quantity(one.value());
    let days = crew.pours.iter().map(|day| {
        json!({
            "pour": day.pour + 1,
            "people": value(&crew.people),
            "cubic_yards": value(&day.yards),
            "trucks": day.trucks,
            "truck_minutes": day.truck.as_ref().map(|(_, minutes)| value(minutes)),
            "truck_may": value(&day.truck_may),
            "placing_hours": value(&day.placing),
            "person_hours": value(&day.work),
            "finishing_hours": value(&day.finishing),
            "setting_hours": value(&day.setting),
            "day_hours": value(&day.day),
            "day_may": value(&day.day_may),
        })
    });
    days.collect()
}

fn split(sheet: &Sheet<'_>) -> Value {
    let parts = sections(&sheet.offer.quoted().lines).into_iter();
    parts
        .map(|part| json!({"section": sheet.section(part.section), "price": money(part.price)}))
        .collect()
}

fn of_one(sheet: &Sheet<'_>) -> Value {
    let found = costing::of_one(sheet.offer.quoted()).into_iter();
    found
        .map(|one| {
            json!({
                "part": sheet.part_of(&one),
                "much": quantity(one.much.value),
                "unit": one.much.unit.symbol(),
                "cost": money(one.cost),
                "price": money(one.price),
            })
        })
        .collect()
}

fn combinations(sheet: &Sheet<'_>) -> Value {
    let by_choice = sheet.offer.by_choice.iter();
    by_choice
        .map(|(choice, priced)| {
            let mut value = json!({"choice": choice.0, "taken": sheet.taken(choice)});
            if let (Value::Object(all), Value::Object(totals)) =
                (&mut value, totals(&priced.totals()))
            {
                all.extend(totals);
            }
            value
        })
        .collect()
}

fn payments(sheet: &Sheet<'_>) -> Value {
    let payments = costing::payments(sheet.business, &sheet.offer.quoted().needs.crew);
    let parts = schedule(sheet.offer.quoted().totals().total, payments);
    let both = payments.iter().zip(parts);
    both.map(|(payment, part)| json!({"when": payment.when, "amount": money(part)}))
        .collect()
}

fn set(sheet: &Sheet<'_>) -> Value {
    let set = sheet.set_by_owner().into_iter();
    set.map(|one| {
        json!({
            "name": one.quantity.name(),
            "set_to": quantity(one.quantity.value()),
            "computed": quantity(one.computed.value()),
            "unit": one.computed.amount().unit.symbol(),
            "because": one.because,
        })
    })
    .collect()
}
