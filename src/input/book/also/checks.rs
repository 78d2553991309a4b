//! The owner's rules, held against the items and against each other: units that fit, names that exist.

use super::order;
use super::quantities::{Among, KNOWN, known};
use super::{Also, OnceA};
use crate::input::book::rates::FIXED;
use crate::input::book::roles::Role;
use crate::input::book::rules::Rules;
use crate::input::book::uses::ONE;
use crate::input::phrases::Effort;
use crate::reading::{At, Place, Problem, Problems, suggest};
use crate::values::Unit;

/// Reports every rule that cannot be followed.
pub(in crate::input::book) fn check(rules: &Rules, problems: &mut Problems) {
    let before = problems.len();
    for rule in rules.also.values() {
        goes_by(rule, rules, problems);
        replaces(rule, rules, problems);
    }
    if problems.len() == before {
        order::check(&rules.also, problems);
    }
}

/// What a rule goes by, in its unit, if it is known; nothing where it counts times.
fn unit_of(rule: &Also, rules: &Rules) -> Option<Unit> {
    let by = &rule.by.as_ref()?.value;
    let of_item = |item: &str| rules.selling.get(item).map(|selling| selling.unit);
    let of_rule = |name: &str| of_item(&rules.also.get(name)?.buy.as_ref()?.value);
    let unit = known(by).map(|known| known.unit);
    unit.or_else(|| of_item(by)).or_else(|| of_rule(by))
}

fn goes_by(rule: &Also, rules: &Rules, problems: &mut Problems) {
    if let Some(has) = rule.only.as_ref().and_then(|only| only.has.as_ref())
        && known(&has.value).is_none_or(|known| known.among != Among::Slabs)
    {
        unknown(has, slab_names(), problems);
    }
    let unit = match &rule.by {
        None => None,
        Some(by) => match unit_of(rule, rules) {
            None => {
                let items = rules.selling.names();
                let names = KNOWN.iter().map(|known| known.name);
                unknown(
                    by,
                    names
                        .chain(items)
                        .chain(rules.also.keys().map(String::as_str)),
                    problems,
                );
                return;
            }
            unit => unit,
        },
    };
    let is_late = match (&rule.by, &rule.once) {
        (Some(by), _) => known(&by.value).is_some_and(|known| known.among == Among::Crew),
        (None, once) => once.as_ref().is_some_and(|once| once.value == OnceA::Trip),
    };
    if let Some(hours) = &rule.hours {
        if is_late {
            let what = "hours cannot follow from trips, which follow from hours";
            told(
                "goes-round",
                hours.place,
                what,
                "leave `hours` out, or go by something else",
                problems,
            );
        }
        match (hours.value, unit) {
            (Effort::Each(_), None) => {}
            (Effort::For(rate), Some(unit)) if rate.per.unit == unit => {}
            (_, None) => wrong_unit(hours.place, "2 hours", "each time", problems),
            (_, Some(unit)) => {
                wrong_unit(
                    hours.place,
                    &format!("2 hours per {unit}"),
                    unit.plural(),
                    problems,
                );
            }
        }
    }
    let Some(item) = &rule.buy else { return };
    let Some(sold) = rules.selling.get(&item.value).map(|selling| selling.unit) else {
        return;
    };
    let counts = match (&rule.each, unit) {
        (None, Some(unit)) => sold == unit,
        (Some(each), Some(unit)) => {
            if each.value.much.unit != unit {
                let help = format!("12 {unit}");
                wrong_unit(each.place, &help, unit.plural(), problems);
                return;
            }
            if each
                .value
                .or
                .is_some_and(|or| !is_loose(rule, or.unit, rules))
            {
                let what = "only what is dumped is counted two ways: by weight, or by loose yards";
                let help = "go `for` an item of `disposal`, and write `6 ton or 8 cu yd`";
                told("wrong-unit", each.place, what, help, problems);
            }
            ONE.contains(&sold)
        }
        (each, None) => {
            if let Some(each) = each {
                let help = "leave it out, or go `for` a quantity";
                told(
                    "wrong-unit",
                    each.place,
                    "`each` is so much of a quantity",
                    help,
                    problems,
                );
            }
            ONE.contains(&sold)
        }
    };
    if !counts {
        let what = format!(
            "`{}` is priced by the {sold}, which cannot count this",
            item.value
        );
        let help = match (unit, &rule.each) {
            (Some(unit), None) => format!("write `each`, or name an item by the {unit}"),
            _ => "name an item by the piece, load, trip or day".to_owned(),
        };
        told("wrong-unit", item.place, &what, &help, problems);
    }
}

/// Whether the rule goes by what is dumped, and this is its loose measure.
fn is_loose(rule: &Also, unit: Unit, rules: &Rules) -> bool {
    let by = rule.by.as_ref().map(|by| &by.value);
    let mut dumped = rules.disposal.values();
    unit == Unit::CubicYard && dumped.any(|dump| Some(&dump.item.value) == by)
}

/// What a rule replaces has to be built in, and the rule has to go by slabs, removal or times.
fn replaces(rule: &Also, rules: &Rules, problems: &mut Problems) {
    let Some(instead) = &rule.instead else { return };
    let purposes = Role::ALL.map(Role::name);
    let fixed = FIXED.iter().map(|(task, _)| *task);
    let tasks: Vec<&str> = fixed
        .chain(rules.rates.0.keys().map(String::as_str))
        .collect();
    let bought = purposes.contains(&instead.value.as_str());
    let done = tasks.contains(&instead.value.as_str());
    if !bought && !done {
        unknown(instead, purposes.into_iter().chain(tasks), problems);
        return;
    }
    if !(bought && rule.buy.is_some() || done && rule.hours.is_some()) {
        let (what, help) = if bought {
            (
                "what is bought is replaced by what is bought",
                "write `buy` too",
            )
        } else {
            ("work is replaced by work", "write `hours` too")
        };
        told("cannot-replace", instead.place, what, help, problems);
    }
    let Some(by) = &rule.by else { return };
    let among = known(&by.value).map(|known| known.among);
    let itself = among == Some(Among::Purposes) && by.value == instead.value;
    if !itself && !matches!(among, Some(Among::Slabs | Among::Removals)) {
        let what = "a rule replaces what it goes by itself, or what goes by slabs or removal";
        let help = format!("write `for: {}`, or a quantity of slabs", instead.value);
        told("cannot-replace", instead.place, what, &help, problems);
    }
}

fn slab_names() -> impl Iterator<Item = &'static str> {
    let slabs = KNOWN.iter().filter(|known| known.among == Among::Slabs);
    slabs.map(|known| known.name)
}

fn unknown<'a>(name: &At<String>, names: impl Iterator<Item = &'a str>, problems: &mut Problems) {
    let problem = Problem::new(
        "unknown-quantity",
        format!("nothing is called `{}`", name.value),
    );
    problems.push(
        problem
            .at(name.place)
            .help(match suggest::closest(&name.value, names) {
                Some(near) => format!("did you mean `{near}`?"),
                None => "`flatwork takeoff FILE --names` lists what a rule can go by".to_owned(),
            }),
    );
}

fn wrong_unit(place: Place, write: &str, by: &str, problems: &mut Problems) {
    let help = format!("write, for example, `{write}`");
    told(
        "wrong-unit",
        place,
        &format!("this rule goes by {by}"),
        &help,
        problems,
    );
}

fn told(code: &'static str, place: Place, what: &str, help: &str, problems: &mut Problems) {
    problems.push(Problem::new(code, what).at(place).help(help));
}
