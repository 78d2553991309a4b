//! The crew's hours, task by task, and the days they become.

use crate::documents::views::cost::HourRow;
use crate::documents::views::office::{Sheet, two_places};
use crate::input::business::Charge;
use crate::trade::Quantity;
use crate::trade::crew::TaskHours;
use crate::values::Unit;
use crate::values::money::grouped;
use crate::values::rounding::with_places;
use rust_decimal::Decimal;

/// Tasks, then travel, all together, and what is charged.
pub(super) fn hours(sheet: &Sheet<'_>) -> Vec<HourRow> {
    let crew = &sheet.offer.quoted().needs.crew;
    let rules = &sheet.business.crew;
    let trips = crew.trips.amount().to_string();
    let people = crew.people.amount().number();
    // Then trips × people is not what is charged.
    let has_fewer = crew.has_few_back();
    let a_trip = |hours: &Quantity, each: String| {
        let rate = set_or(hours, || {
            if has_fewer {
                format!("{each} h a person")
            } else {
                format!("{each} h × {people}")
            }
        });
        (trips.clone(), rate, number(hours))
    };
    let mut rows: Vec<HourRow> = crew.tasks.iter().map(task).collect();
    if !crew.travel.value().is_zero() {
        let travel = a_trip(&crew.travel, rules.travel.value.number());
        rows.push(row("plain", "travel", travel));
    }
    if let Some(set_up) = &crew.set_up {
        let set_up = a_trip(set_up, rules.set_up.value.number());
        rows.push(row("plain", "set up and clean up", set_up));
    }
    if let Some(waiting) = &crew.waiting {
        let rate = set_or(waiting, || "until it sets".to_owned());
        let waiting = (String::new(), rate, number(waiting));
        rows.push(row("plain", "wait on the pour", waiting));
    }
    // Once for all tasks, in place of on each.
    let parts = || crew.tasks.iter().flat_map(|task| task.hours.parts());
    let difficulty = parts().find(|part| part.name() == "difficulty");
    let difficulty = difficulty.map(|of| format!("tasks{}", factor(&of)));
    let worked = (
        String::new(),
        difficulty.unwrap_or_default(),
        number(&crew.hours),
    );
    rows.push(row("sum", "Hours worked out", worked));
    let days = match crew.charged.overruled() {
        Some(_) => String::new(),
        None => format!("{} × {people}", crew.days.amount()),
    };
    let rate = set_or(&crew.charged, || match rules.charge.value {
        Charge::Hours => "as worked out".to_owned(),
        Charge::CrewDays => format!("{} h a day", rules.hours_in_a_day.value.number()),
    });
    let charged = (days, rate, number(&crew.charged));
    rows.push(row("plain", "Hours charged", charged));
    rows
}

fn row(kind: &'static str, task: &str, (work, rate, hours): (String, String, String)) -> HourRow {
    HourRow {
        kind,
        task: task.to_owned(),
        work,
        rate,
        hours,
    }
}

fn task(task: &TaskHours) -> HourRow {
    let work = two_places(task.work.amount()).to_string();
    let rate = set_or(&task.hours, || rate(&task.hours));
    row("plain", &task.name, (work, rate, number(&task.hours)))
}

fn number(quantity: &Quantity) -> String {
    grouped(with_places(quantity.value(), 2))
}

/// What stands in place of a rate where the owner set the hours.
fn set_or(hours: &Quantity, rate: impl FnOnce() -> String) -> String {
    hours.overruled().map_or_else(rate, |computed| {
        format!("set, not {}", two_places(computed.amount()).number())
    })
}

/// `7 h per 100 × 1.26 way`, from the figures of the rate and what multiplies it; the unit stands
/// beside it, with the work.
fn rate(hours: &Quantity) -> String {
    let parts = hours.parts();
    let named = |wanted: &dyn Fn(&str) -> bool| parts.iter().find(|part| wanted(part.name()));
    let much = named(&|name| name.ends_with(" rate"));
    let (Some(much), Some(per)) = (much, named(&|name| name == "for each")) else {
        return String::new();
    };
    let hours = match much.amount().unit {
        Unit::CrewHour => "crew h",
        Unit::Minute => "min",
        _ => "h",
    };
    let each = if per.value() == Decimal::ONE {
        String::new()
    } else {
        format!(" per {}", per.amount().number())
    };
    // A way by its pour, or of several pours together.
    let is_way = |name: &str| name.starts_with("way by ") || name.ends_with(" way");
    let times = [
        named(&|name| name == "people").map(factor),
        named(&is_way).map(|way| format!("{} way", factor(way))),
    ];
    let times: String = times.into_iter().flatten().collect();
    format!("{} {hours}{each}{times}", much.amount().number())
}

fn factor(of: &Quantity) -> String {
    format!(" × {}", of.amount())
}
