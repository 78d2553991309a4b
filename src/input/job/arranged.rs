//! What is arranged around a job: the plant's zone, yards that wait for a call, the permit.

use crate::input::book::PriceBook;
use crate::input::job::JobHead;
use crate::reading::{At, Fields, Problem, Problems, Read, suggest};
use crate::values::Unit;

/// Who takes out the permit.
#[derive(Clone, Debug)]
pub enum Permit {
    /// Nothing is said: what the business usually says about permits holds.
    Unsaid,
    /// None is asked for.
    None,
    Customer,
    /// We do, for an item of the book.
    Item(At<String>),
}

#[expect(clippy::unnecessary_wraps, reason = "a reader of a key")]
pub(super) fn permit(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Permit> {
    let permit = job.read::<String>(key, problems);
    Ok(match permit {
        None => Permit::Unsaid,
        Some(word) => match word.value.as_str() {
            "none" | "no" => Permit::None,
            "customer" => Permit::Customer,
            _ => Permit::Item(word),
        },
    })
}

/// Looks up the names.
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
    if let Permit::Item(name) = &job.permit
        && !book.items.broken.contains(&name.value)
    {
        counted(name, book, problems);
    }
}

fn counted(name: &At<String>, book: &PriceBook, problems: &mut Problems) {
    let Some(item) = book.items.get(&name.value) else {
        let message = format!("price book has no item `{}`", name.value);
        let problem = Problem::new("unknown-price-item", message).at(name.place);
        let words = ["customer", "none"].into_iter();
        let known = words.chain(book.items.keys().map(String::as_str));
        problems.push(match suggest::closest(&name.value, known) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None => problem.help(
                "write `customer` if they take it out, `none` if none is asked for, or an item of the book",
            ),
        });
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
