//! What is arranged around a job, looked up in the price book: the plant's zone, the permit.

use super::permit::Permit;
use super::written::JobHead;
use crate::input::book::PriceBook;
use crate::reading::{At, Problem, Problems, suggest};
use crate::values::Unit;

/// Looks up the names of the zone and of the permit.
pub(super) fn check(job: &JobHead, book: &PriceBook, problems: &mut Problems) {
    if let Some(zone) = &job.zone {
        let zones: Vec<&str> = book
            .rules
            .supply
            .iter()
            .flat_map(|supply| supply.charges.zones.keys().map(String::as_str))
            .collect();
        if book.rules.supply.is_some() && !zones.contains(&zone.value.as_str()) {
            let message = format!("price book has no zone `{}`", zone.value);
            let problem = Problem::new("unknown-name", message).at(zone.place);
            problems.push(match suggest::closest(&zone.value, zones.iter().copied()) {
                Some(near) => problem.help(format!("did you mean `{near}`?")),
                None if zones.is_empty() => {
                    problem.help("take the line out, or write `zones` under `supply` of the book")
                }
                None => problem.help(format!("it has {}", zones.join(", "))),
            });
        }
    }
    if let Permit::Item(name) = &job.permit {
        counted(name, book, problems);
    }
}

fn counted(name: &At<String>, book: &PriceBook, problems: &mut Problems) {
    let unknown = || {
        let message = format!("price book has no item `{}`", name.value);
        let problem = Problem::new("unknown-price-item", message).at(name.place);
        let words = ["customer", "none"].into_iter();
        let known = words.chain(book.items.keys().map(String::as_str));
        match suggest::closest(&name.value, known) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None => problem.help(
                "write `customer` if they take it out, `none` if none is asked for, or an item of the book",
            ),
        }
    };
    let Ok(item) = book.items.known(&name.value, problems, unknown) else {
        return;
    };
    if !matches!(item.unit, Unit::Lump | Unit::Piece | Unit::Trip) {
        let message = format!(
            "`{}` is priced by the {}, which cannot count a permit",
            name.value, item.unit
        );
        problems.push(
            Problem::new("wrong-unit", message)
                .at(name.place)
                .also(item.place, "the item")
                .help("give the item the unit `lump`, or name another item"),
        );
    }
}
