//! Re-priced quotes for other programs.

use serde_json::{Value, json};

use super::money;
use crate::costing::Room;
use crate::costing::outcome::{Finding, Outcomes, causes, exposure};
use crate::costing::repricing::Headroom;
use crate::documents::column::{self, Cell};
use crate::documents::views::office::reprice::{group, quotes};
use crate::input::book::Class;
use crate::values::Day;

/// Everything, the most harm first.
pub fn json(answer: &Outcomes, today: Day) -> String {
    let findings = answer.findings(today);
    let left_out = answer.left_out().into_iter();
    let left_out = left_out.map(|(number, because)| json!({"number": number, "because": because}));
    column::json(&json!({
        "asked_on": today.to_string(),
        "open_quotes_cost_more_by": money(exposure(&findings, true)),
        "signed_work_costs_more_by": money(exposure(&findings, false)),
        "quotes": findings.iter().map(quote).collect::<Vec<_>>(),
        "left_out": left_out.collect::<Vec<_>>(),
    }))
}

/// Its row, and what belongs to it alone.
fn quote(one: &Finding<'_>) -> Value {
    let causes = causes(one.found).map(|(of, change)| {
        json!({
            "group": group(of),
            "title": change.title,
            "class": change.class.map(Class::name),
            "by": money(change.by()),
        })
    });
    let mut quote = quotes().object(one);
    quote["notes"] = json!(one.quote.notes);
    quote["causes"] = causes.collect();
    quote["room"] = one.found.rooms.iter().map(headroom).collect();
    quote
}

/// The last prices that still stand; null where there is no such price.
fn headroom(one: &Headroom) -> Value {
    let price = |room: Room| match room {
        Room::UpTo { price, .. } => Cell::number(price.dollars().normalize()).into(),
        Room::Far | Room::None => Value::Null,
    };
    json!({
        "item": one.item,
        "to_the_floor": price(one.to_floor),
        "to_no_profit": price(one.to_zero),
    })
}
