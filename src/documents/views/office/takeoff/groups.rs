//! The quantities of a job, gathered by what they belong to.

use super::slab;
use crate::documents::views::office::{Sheet, numbered};
use crate::input::business::DayCount;
use crate::trade::Quantity;
use crate::trade::calendar::{Calendar, Dated};
use crate::trade::crew::Step;
use crate::trade::order::ConcreteOrder;
use crate::trade::tally::{Listed, Scope};

/// Quantities that belong together, and what has to be said beside them.
#[derive(Clone, Debug)]
pub struct Group {
    /// `slab`, `removal`, `order`, `bought`, `pour`, `work` or `crew`.
    pub part: &'static str,
    pub title: String,
    pub quantities: Vec<Quantity>,
    pub notes: Vec<String>,
}

/// Every quantity of the job as quoted; what is zero is left out.
pub fn groups(sheet: &Sheet<'_>) -> Vec<Group> {
    let (materials, time): (Vec<_>, Vec<_>) =
        (sheet.offer.quoted().needs.quantities()).partition(|(scope, _)| match scope {
            Scope::Slab(_) | Scope::Removal | Scope::Order(_) => true,
            Scope::Pour(_) | Scope::Work | Scope::Crew => false,
        });
    let by_part = |listed: &[(Scope, &Listed)]| -> Vec<Group> {
        let parts = listed.chunk_by(|(one, _), (other, _)| one == other);
        parts.map(|part| group(sheet, part)).collect()
    };
    let mut groups = by_part(&materials);
    groups.push(bought(sheet));
    groups.extend(by_part(&time));
    for group in &mut groups {
        group
            .quantities
            .retain(|quantity| !quantity.value().is_zero());
    }
    groups.retain(|group| !group.quantities.is_empty());
    groups
}

fn group(sheet: &Sheet<'_>, listed: &[(Scope, &Listed)]) -> Group {
    let needs = &sheet.offer.quoted().needs;
    let (part, title, notes) = match listed[0].0 {
        Scope::Slab(i) => {
            let (slab, found) = (&sheet.takeoff.slabs[i], &needs.slabs[i]);
            let notes = slab::notes(sheet, slab, found);
            ("slab", slab::title(sheet, slab), notes)
        }
        Scope::Removal => ("removal", "Removal".into(), Vec::new()),
        Scope::Order(i) => {
            let order = &needs.orders[i];
            let title = format!("Concrete: {}", order.order.name());
            ("order", title, trucks(order))
        }
        Scope::Pour(i) => ("pour", pour_title(sheet, i), Vec::new()),
        Scope::Work => ("work", "Work".into(), Vec::new()),
        Scope::Crew => {
            let mut notes = vec!["`labor` is the hours charged.".into()];
            notes.extend(counted(sheet).map(str::to_owned));
            notes.extend(calendar(sheet));
            ("crew", "Crew".into(), notes)
        }
    };
    let quantities = listed.iter().map(|(_, one)| one.quantity.clone());
    Group {
        part,
        title,
        quantities: quantities.collect(),
        notes,
    }
}

/// `Pour 2, 2026-06-25`.
fn pour_title(sheet: &Sheet<'_>, pour: usize) -> String {
    let day = sheet.days[pour].day;
    match sheet.days.len() {
        1 => format!("Day of the pour, {day}"),
        _ => format!("Day of pour {}, {day}", pour + 1),
    }
}

/// What is counted how, where two numbers of this job could be taken for one.
fn counted(sheet: &Sheet<'_>) -> impl Iterator<Item = &'static str> {
    let crew = &sheet.offer.quoted().needs.crew;
    let is_planned = sheet.takeoff.head.trips.is_some();
    let is_apart = crew.returns.is_some()
        && !is_planned
        && sheet.business.crew.day_count.value == DayCount::ByStage;
    let is_long = crew.stretches.iter().any(|one| one.is_long);
    [
        (is_planned, "`trips to` a stage are its part, by hours, of the trips you plan, whatever days the calendar names."),
        (is_apart, "`return trips` are those that finishes, sealers and rules ask for; `trips after the pour` those on days of their own."),
        (is_long, "A pour that is longer than a day is one of the `working days` and one trip; its hours are charged as they are."),
    ]
    .into_iter()
    .filter_map(|(is_told, note)| is_told.then_some(note))
}

/// When each stage falls, with the night before it; from the lead time where no pour has a day.
fn calendar(sheet: &Sheet<'_>) -> Vec<String> {
    let crew = &sheet.offer.quoted().needs.crew;
    let calendar = Calendar::of(sheet.takeoff, crew, sheet.quoted, sheet.business);
    let dated = calendar.stretches.iter();
    let lines = dated.map(|(stretch, dated)| {
        let days = match dated {
            Some(Dated { from, to }) if from == to => from.with_weekday(),
            Some(Dated { from, to }) => {
                format!("{} to {}", from.with_weekday(), to.with_weekday())
            }
            None => "on a day of its own".to_owned(),
        };
        // Whoever comes back weeks later has more than a night before it.
        let night = match stretch.night {
            "" => String::new(),
            _ if dated.is_none() || stretch.is_later() => String::new(),
            why => format!("; a night before, since {why}"),
        };
        let every = if stretch.has(Step::Wet) {
            ", every day, weekends too"
        } else {
            ""
        };
        format!("{days}: {}{every}{night}", stretch.name)
    });
    lines.collect()
}

/// What is on each truck.
fn trucks(order: &ConcreteOrder) -> Vec<String> {
    if let Some(bags) = &order.bags {
        return vec![format!("{} mixed by hand; no truck comes", bags.amount())];
    }
    let trucks = if order.loads.len() == 1 {
        "load"
    } else {
        "loads"
    };
    let mut notes = vec![format!(
        "{} {trucks}: {} cu yd",
        order.loads.len(),
        order.trucks()
    )];
    notes.extend(order.otherwise.clone());
    notes.extend(order.held.as_ref().map(|held| {
        let (waits, truck) = (held.on_call.amount(), "on a truck of its own");
        if order.has_own_truck {
            format!("{waits} waits until you call for it, {truck}")
        } else {
            format!("of the last load {waits} waits until you call for it")
        }
    }));
    notes
}

/// What is paid for, in the amount that is really bought.
fn bought(sheet: &Sheet<'_>) -> Group {
    let lines = numbered(&sheet.offer.quoted().lines);
    Group {
        part: "bought",
        title: "Bought, hired and charged".into(),
        quantities: lines
            .iter()
            .filter_map(|(_, line)| line.quantity.clone())
            .collect(),
        notes: Vec::new(),
    }
}
