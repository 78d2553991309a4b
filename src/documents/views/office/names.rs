//! All that a rule of the price book can go by or stand in place of: what is bought by itself, the
//! work, every quantity by its name; and how much of each this job has.

use super::{Sheet, unit};
use crate::documents::table::{Align, table};
use crate::input::book::{Among, Role, TASKS, task_units};
use crate::trade::needs::JobNeeds;
use crate::trade::order::NeedItem;
use crate::values::{Amount, Unit};

/// A heading, and under it names with amounts and what is said of them.
type Part = (&'static str, Vec<Vec<String>>);

/// What is built in, then the quantities by where they are found, then what is bought.
pub fn text(sheet: &Sheet<'_>) -> String {
    let takeoff = sheet.takeoff;
    let needs = &sheet.offer.quoted().needs;
    let names = needs.names(takeoff);
    let of = |among: Among| {
        let found = names.iter().filter(|(known, _)| known.among == among);
        found
            .map(|(known, much)| row(known.name, *much, ""))
            .collect()
    };
    let bought = bought(needs).into_iter();
    let parts: [Part; 7] = [
        ("Bought by itself, under use", purposes(sheet, needs)),
        ("Work, under rates", work(sheet, needs)),
        ("Each slab by itself", of(Among::Slabs)),
        ("Removal", of(Among::Removals)),
        ("Ready-mix orders", of(Among::Orders)),
        ("The crew; hours cannot follow from it", of(Among::Crew)),
        (
            "Items that are bought",
            bought.map(|(name, much)| row(name, much, "")).collect(),
        ),
    ];
    let all: Vec<Vec<String>> = parts.iter().flat_map(|(_, rows)| rows.clone()).collect();
    let aligned = [Align::Left, Align::Point, Align::Left, Align::Left];
    let mut rows = table(&aligned, &all).into_iter();
    let mut out = vec![format!(
        "{}, for {}: what a rule under `also` can go by, and how much there is; what stands under `use` \
         and `rates` it can also stand `instead of`",
        takeoff.name, takeoff.customer.name
    )];
    for (title, of_part) in &parts {
        out.extend([String::new(), title.to_uppercase()]);
        let rows = rows.by_ref().take(of_part.len());
        out.extend(rows.map(|row| format!("  {row}").trim_end().to_owned()));
    }
    out.join("\n") + "\n"
}

/// Each purpose with what the book buys for it, and what that goes by.
fn purposes(sheet: &Sheet<'_>, needs: &JobNeeds) -> Vec<Vec<String>> {
    let names = needs.names(sheet.takeoff);
    let all_bought = bought(needs);
    let purposes = Role::ALL.into_iter().map(Role::purpose);
    let rows = purposes.map(|one| {
        let item = sheet.book.rules.roles.get(&one.role);
        let buys = match (item.map(|item| &item.value), one.left_out) {
            (Some(Some(item)), _) => format!("buys `{item}`"),
            (Some(None), _) => "not charged".to_owned(),
            (None, Some(otherwise)) => otherwise.to_owned(),
            (None, None) => "not in this book".to_owned(),
        };
        let of_slabs = names
            .iter()
            .find(|(known, _)| known.name == one.role.name());
        let item = item.and_then(|item| item.value.as_deref());
        let bought = all_bought.iter().find(|(name, _)| Some(*name) == item);
        let much = of_slabs
            .filter(|(known, _)| known.among == Among::Purposes)
            .map(|(_, much)| *much)
            .or(bought.map(|(_, much)| *much));
        let much = much.unwrap_or(Amount::new(0.into(), one.units[0]));
        row(one.role.name(), much, &format!("{buys}; {}", one.by))
    });
    rows.collect()
}

/// Each task with its rate in the book, or the units in which it may be rated.
fn work(sheet: &Sheet<'_>, needs: &JobNeeds) -> Vec<Vec<String>> {
    let rates = &sheet.book.rules.rates;
    let finishes = rates.0.keys().filter(|task| task.starts_with("finish "));
    let tasks = TASKS.iter().map(|(task, _)| *task);
    let rows = tasks.chain(finishes.map(String::as_str)).map(|task| {
        let done = needs.crew.tasks.iter().find(|one| one.name == task);
        let much = done.map_or(Amount::new(0.into(), Unit::Hour), |one| one.work.amount());
        let rate = rates.get(task).map(|rate| rate.value.to_string());
        let none = || {
            let units: Vec<_> = task_units(task).iter().map(|unit| unit.symbol()).collect();
            format!("no rate in this book, by {}", units.join(" or "))
        };
        row(task, much, &rate.unwrap_or_else(none))
    });
    rows.collect()
}

/// Every item that is bought, by name.
fn bought(needs: &JobNeeds) -> Vec<(&str, Amount)> {
    let mut bought: Vec<(&str, Amount)> = Vec::new();
    for need in &needs.needs {
        let NeedItem::Item(item) = &need.item else {
            continue;
        };
        let much = need.quantity.amount();
        match bought.iter_mut().find(|(name, _)| *name == item.value) {
            Some((_, all)) => all.value += much.value,
            None => bought.push((&item.value, much)),
        }
    }
    bought.sort_by_key(|(name, _)| *name);
    bought
}

fn row(name: &str, much: Amount, said: &str) -> Vec<String> {
    let (number, unit) = if much.value.is_zero() {
        ("-".to_owned(), String::new())
    } else {
        (much.number(), unit(much))
    };
    vec![name.to_owned(), number, unit, said.to_owned()]
}
