//! Names looked up in the price book and in business.yaml.

use crate::input::book::{PriceBook, Role};
use crate::input::business::Business;
use crate::input::job::written::SlabWritten;
use crate::reading::{At, Named, Problem, Problems, Read, suggest};
use crate::values::Unit;

/// A slab's kind is what `kind` says, else its name, else the last word of its name that is a kind.
///
/// A slip is reported and read as the kind that was probably meant, so that what follows from it
/// can be looked at too; nothing is priced by it.
pub(super) fn kind(
    written: &SlabWritten,
    business: &Business,
    problems: &mut Problems,
) -> Read<String> {
    let name = written.kind.as_ref().unwrap_or(&written.key);
    if business.kinds.contains_key(&name.value) {
        return Ok(name.value.clone());
    }
    if written.kind.is_none()
        && let Some(word) = name
            .value
            .split_whitespace()
            .rev()
            .find(|word| business.kinds.contains_key(*word))
    {
        return Ok(word.to_owned());
    }
    let names: Vec<&str> = business.kinds.keys().map(String::as_str).collect();
    let problem = Problem::new(
        "unknown-kind",
        format!("business.yaml has no kind of slab `{}`", name.value),
    )
    .at(name.place);
    let near = suggest::closest(&name.value, names.iter().copied());
    let reported = problems.push(match near {
        Some(near) => problem.help(format!(
            "did you mean `{near}`? Its kinds are {}",
            names.join(", ")
        )),
        None => problem.help(format!(
            "say `kind: {}` below it, or one of {}",
            names.first().unwrap_or(&"patio"),
            names.join(", ")
        )),
    });
    near.map(str::to_owned).ok_or(reported)
}

/// Reports kinds that a rule of the book is for and business.yaml does not have.
pub(super) fn kinds_of_rules(book: &PriceBook, business: &Business, problems: &mut Problems) {
    let kinds = || business.kinds.keys().map(String::as_str);
    let rules = book.rules.also.values();
    let said = rules.filter_map(|rule| rule.only.as_ref()?.kind.as_ref());
    for kind in said.filter(|kind| !business.kinds.contains_key(&kind.value)) {
        let message = format!("business.yaml has no kind of slab `{}`", kind.value);
        let problem = Problem::new("unknown-kind", message).at(kind.place);
        problems.push(problem.help(match suggest::closest(&kind.value, kinds()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("its kinds are {}", kinds().collect::<Vec<_>>().join(", ")),
        }));
    }
}

/// The name, or the one that was probably meant by it, which is reported like any unknown one.
pub(super) fn meant<T>(
    name: At<String>,
    among: &Named<T>,
    what: &str,
    problems: &mut Problems,
) -> Read<At<String>> {
    let Err(reported) = known(&name, among, what, problems) else {
        return Ok(name);
    };
    let near = suggest::closest(&name.value, among.keys().map(String::as_str));
    match near.filter(|_| !among.broken.has(&name.value)) {
        Some(near) => Ok(At::new(near.to_owned(), name.place)),
        None => Err(reported),
    }
}

pub(super) fn known<'a, T>(
    name: &At<String>,
    among: &'a Named<T>,
    what: &str,
    problems: &mut Problems,
) -> Read<&'a T> {
    among.known(&name.value, problems, || {
        let names: Vec<&str> = among.keys().map(String::as_str).collect();
        let message = format!("price book has no {what} `{}`", name.value);
        let problem = Problem::new("unknown-name", message).at(name.place);
        match suggest::closest(&name.value, names.iter().copied()) {
            Some(near) => problem.help(format!("did you mean `{near}`?")),
            None if names.is_empty() => problem.help(format!(
                "the price book names no {what} at all; add it there"
            )),
            None => problem.help(format!("it has {}", names.join(", "))),
        }
    })
}

pub(super) fn known_in_unit(
    name: &At<String>,
    amount: &At<crate::values::Amount>,
    book: &PriceBook,
    problems: &mut Problems,
) {
    let Ok(item) = book.item(&name.value, name.place, problems) else {
        return;
    };
    // Hours of the crew are said like any others.
    let labor = book.rules.roles.get(&Role::Labor);
    let is_crew = labor.is_some_and(|role| role.value.as_ref() == Some(&name.value));
    if is_crew && amount.value.unit.is_time()
        || amount.value.unit == item.unit
        || (amount.value.unit == Unit::Plain && matches!(item.unit, Unit::Piece | Unit::Lump))
    {
        return;
    }
    let found = if amount.value.unit == Unit::Plain {
        "without a unit".to_owned()
    } else {
        format!("in {}", amount.value.unit.symbol())
    };
    let message = format!(
        "`{}` is priced in {}, and this is {found}",
        name.value,
        item.unit.symbol()
    );
    problems.push(
        Problem::new("wrong-unit", message)
            .at(amount.place)
            .also(item.place, "the price book says so here")
            .help(format!("write how many {}", item.unit.plural())),
    );
}
