//! What a rule of the price book can go by: every quantity by its name, and how much this job has.

use super::{Sheet, unit};
use crate::documents::table::{Align, table};
use crate::input::book::Among;
use crate::trade::order::NeedItem;
use crate::values::Amount;

/// The quantities by where they are found, then what is bought.
pub fn text(sheet: &Sheet<'_>) -> String {
    let takeoff = sheet.takeoff;
    let needs = &sheet.offer.quoted().needs;
    let names = needs.names(takeoff);
    let of = |among: Among| -> Vec<Vec<String>> {
        let found = names.iter().filter(|(known, _)| known.among == among);
        found.map(|(known, much)| row(known.name, *much)).collect()
    };
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
    let bought = bought.into_iter().map(|(name, much)| row(name, much));
    let parts = [
        ("What is built in", of(Among::Purposes)),
        ("Each slab by itself", of(Among::Slabs)),
        ("Removal", of(Among::Removals)),
        ("Ready-mix orders", of(Among::Orders)),
        ("The crew; hours cannot follow from it", of(Among::Crew)),
        ("Items that are bought", bought.collect()),
    ];
    let all: Vec<Vec<String>> = parts.iter().flat_map(|(_, rows)| rows.clone()).collect();
    let mut rows = table(&[Align::Left, Align::Point, Align::Left], &all).into_iter();
    let mut out = vec![format!(
        "{}, for {}: what a rule under `also` can go by, and how much there is",
        takeoff.name, takeoff.customer.name
    )];
    for (title, of_part) in &parts {
        out.extend([String::new(), title.to_uppercase()]);
        out.extend(
            rows.by_ref()
                .take(of_part.len())
                .map(|row| format!("  {row}")),
        );
    }
    out.join("\n") + "\n"
}

fn row(name: &str, much: Amount) -> Vec<String> {
    let (number, unit) = if much.value.is_zero() {
        ("-".to_owned(), String::new())
    } else {
        (much.number(), unit(much))
    };
    vec![name.to_owned(), number, unit]
}
