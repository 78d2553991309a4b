//! The crew's hours, task by task, and the days they become.

use super::lines::two_places;
use crate::documents::views::cost::HourRow;
use crate::documents::views::office::Sheet;
use crate::input::business::Charge;
use crate::trade::crew::TaskHours;
use crate::trade::{Quantity, Working};
use crate::values::Unit;
use crate::values::money::grouped;
use crate::values::rounding::with_places;
use rust_decimal::Decimal;

/// Tasks, then travel, all together, and what is charged.
pub(super) fn hours(sheet: &Sheet<'_>) -> Vec<HourRow> {
    let crew = &sheet.offer.quoted().needs.crew;
    let mut rows: Vec<HourRow> = crew.tasks.iter().map(task).collect();
    if !crew.travel.value().is_zero() {
        rows.push(HourRow {
            kind: "plain".to_owned(),
            task: "travel".to_owned(),
            work: crew.trips.amount().to_string(),
            rate: set_or(&crew.travel, || {
                format!("{} h each", sheet.business.crew.travel.value.number())
            }),
            hours: number(&crew.travel),
        });
    }
    rows.extend(crew.set_up.as_ref().map(|set_up| HourRow {
        kind: "plain".to_owned(),
        task: "set up and clean up".to_owned(),
        work: crew.trips.amount().to_string(),
        rate: set_or(set_up, || {
            format!("{} h each", sheet.business.crew.set_up.value.number())
        }),
        hours: number(set_up),
    }));
    rows.push(HourRow {
        kind: "sum".to_owned(),
        task: "Hours worked out".to_owned(),
        work: String::new(),
        rate: String::new(),
        hours: number(&crew.hours),
    });
    rows.push(HourRow {
        kind: "plain".to_owned(),
        task: "Hours charged".to_owned(),
        work: format!(
            "{} × {}",
            crew.days.amount(),
            sheet.business.crew.people.value.number()
        ),
        rate: set_or(&crew.charged, || match sheet.business.crew.charge.value {
            Charge::Hours => "as worked out".to_owned(),
            Charge::CrewDays => format!(
                "{} h a day",
                sheet.business.crew.hours_in_a_day.value.number()
            ),
        }),
        hours: number(&crew.charged),
    });
    rows
}

fn task(task: &TaskHours) -> HourRow {
    HourRow {
        kind: "plain".to_owned(),
        task: task.name.clone(),
        work: two_places(task.work.amount()).to_string(),
        rate: set_or(&task.hours, || rate(&task.hours)),
        hours: number(&task.hours),
    }
}

fn number(quantity: &Quantity) -> String {
    grouped(with_places(quantity.value(), 2))
}

/// What stands in place of a rate where the owner set the hours.
fn set_or(hours: &Quantity, rate: impl FnOnce() -> String) -> String {
    match hours.working() {
        Working::Set { computed, .. } => {
            format!("set, not {}", two_places(computed.amount()).number())
        }
        Working::Given(_) | Working::Shape { .. } | Working::Plan { .. } | Working::Rule { .. } => {
            rate()
        }
    }
}

/// `7 h per 100`, from the two figures of the rate; the unit stands beside it, with the work.
fn rate(hours: &Quantity) -> String {
    let parts = hours.parts();
    let named = |wanted: &dyn Fn(&str) -> bool| parts.iter().find(|part| wanted(part.name()));
    let much = named(&|name| name.ends_with(" rate"));
    let per = named(&|name| name == "for each");
    match (much, per) {
        (Some(much), Some(per)) => {
            let hours = if much.amount().unit == Unit::CrewHour {
                "crew h"
            } else {
                "h"
            };
            let each = if per.value() == Decimal::ONE {
                String::new()
            } else {
                format!(" per {}", per.amount().number())
            };
            format!("{} {hours}{each}", much.amount().number())
        }
        _ => String::new(),
    }
}
