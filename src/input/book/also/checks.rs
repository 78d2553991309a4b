//! The owner's rules, held against the items and against each other: units that fit, names that exist.

use super::order;
use super::quantities::{all_known, known};
use super::{Also, OnceA};
use crate::input::book::rates::FIXED;
use crate::input::book::roles::{Among, Role};
use crate::input::book::rules::Rules;
use crate::input::book::uses::ONE;
use crate::input::phrases::{Effort, Much};
use crate::reading::{At, Place, Problem, Problems, suggest};
use crate::values::{Amount, Unit};

/// Reports every rule that cannot be followed.
pub(in crate::input::book) fn check(rules: &Rules, problems: &mut Problems) {
    let before = problems.len();
    for (name, rule) in rules.also.iter() {
        named(name, rule, problems);
        if let Some(finish) = rule.only.as_ref().and_then(|only| only.finish.as_ref()) {
            finished(finish, rules, problems);
        }
        goes_by(rule, rules, problems);
        limited(rule, problems);
        replaces(rule, rules, problems);
    }
    replaced_once(rules, problems);
    if problems.len() == before {
        order::check(&rules.also, problems);
    }
}

/// A name that already means something else would be asked for in vain.
fn named(name: &str, rule: &Also, problems: &mut Problems) {
    let is_role = Role::ALL.into_iter().any(|role| role.name() == name);
    let is_task = FIXED.iter().any(|(task, _)| *task == name) || name.starts_with("finish ");
    if is_role || is_task || known(name).is_some() {
        let what = format!("`{name}` is built in already");
        let help = "give the rule another name, for example `my {name}`".replace("{name}", name);
        told("name-taken", rule.place, &what, &help, problems);
    }
}

/// `where` picks slabs, so the rule has to go by something that slabs have.
fn limited(rule: &Also, problems: &mut Problems) {
    let Some(only) = &rule.only else { return };
    let of_slabs = match (&rule.by, &rule.once) {
        (Some(by), _) => known(&by.value).is_some_and(|known| match known.among {
            Among::Purposes | Among::Slabs | Among::Orders => true,
            Among::Removals | Among::Crew => false,
        }),
        (None, once) => once.as_ref().is_none_or(|once| once.value != OnceA::Trip),
    };
    if !of_slabs {
        let what = "`where` picks slabs, and this rule goes by something of the whole job";
        let help = "leave `where` out, or go by a quantity of slabs";
        told("cannot-limit", only.place, what, help, problems);
    }
}

/// A finish that the book knows, by its rate or its entry.
fn finished(finish: &At<String>, rules: &Rules, problems: &mut Problems) {
    let rated = rules.rates.get(&format!("finish {}", finish.value));
    if rated.is_some() || rules.finishes.contains_key(&finish.value) {
        return;
    }
    let what = format!("the book has no finish `{}`", finish.value);
    let help = match rules.nearest_finish(&finish.value) {
        Some(near) => format!("did you mean `{near}`?"),
        None => "name one of `finishes`, or of the rates that begin with `finish`".to_owned(),
    };
    told("unknown-finish", finish.place, &what, &help, problems);
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
    let unit = unit_of(rule, rules);
    if let Some(by) = &rule.by
        && unit.is_none()
    {
        nothing_called(by, rules, problems);
        return;
    }
    if let (Some(over), Some(unit)) = (&rule.over, unit)
        && over.value.unit != unit
    {
        let write = converted(over.value, unit, 20).to_string();
        wrong_unit(over.place, &write, unit.plural(), problems);
    }
    hours(rule, unit, rules, problems);
    buys(rule, unit, rules, problems);
}

/// What a rule goes by is neither a quantity nor bought.
fn nothing_called(by: &At<String>, rules: &Rules, problems: &mut Problems) {
    if rules.also.contains_key(&by.value) {
        let what = format!("the rule `{}` buys nothing to go by", by.value);
        let help = "go by the quantity that it goes by";
        told("unknown-quantity", by.place, &what, help, problems);
        return;
    }
    let names = all_known().map(|known| known.name);
    let others = rules.also.keys().map(String::as_str);
    let names = names.chain(rules.selling.names()).chain(others);
    unknown(by, names, problems);
}

fn hours(rule: &Also, unit: Option<Unit>, rules: &Rules, problems: &mut Problems) {
    let Some(hours) = &rule.hours else { return };
    if order::is_late(rule, rules) {
        let what = "hours cannot follow from trips or hours, or from what is bought for them";
        let help = "leave `hours` out, or go by something else";
        told("goes-round", hours.place, what, help, problems);
    }
    match (hours.value, unit) {
        (Effort::Each(_), None) => {}
        (Effort::For(rate), Some(unit)) if rate.per.unit == unit => {}
        (_, None) => wrong_unit(hours.place, "2 hours", "each time", problems),
        (_, Some(unit)) => {
            let write = format!("2 hours per {unit}");
            wrong_unit(hours.place, &write, unit.plural(), problems);
        }
    }
}

fn buys(rule: &Also, unit: Option<Unit>, rules: &Rules, problems: &mut Problems) {
    let Some(item) = &rule.buy else { return };
    let Some(sold) = rules.selling.get(&item.value).map(|selling| selling.unit) else {
        return;
    };
    if let Some(much) = &rule.much {
        bought_for(much, unit, sold, problems);
        return;
    }
    let counts = match (&rule.each, unit) {
        (None, Some(unit)) => sold == unit || measures(rule, sold),
        (Some(each), Some(unit)) => {
            if each.value.much.unit != unit {
                let much = each.value.much;
                let is_time = much.unit == Unit::Day || much.unit.is_time();
                if is_time && much.to(unit).is_none() {
                    let what = format!("this rule goes by {}", unit.plural());
                    let help = "for what is hired by the day write `once a: pour` in place of `for`, without `each`";
                    told("wrong-unit", each.place, &what, help, problems);
                } else {
                    let write = converted(much, unit, 12).to_string();
                    wrong_unit(each.place, &write, unit.plural(), problems);
                }
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

/// So much of an item for so much of what the rule goes by, or so many each time.
fn bought_for(much: &At<Much>, unit: Option<Unit>, sold: Unit, problems: &mut Problems) {
    let is_of_it = |much: Amount| much.unit == sold || much.unit == Unit::Plain;
    match (much.value, unit) {
        (Much::For(ratio), Some(unit)) if is_of_it(ratio.much) && ratio.per.unit == unit => {}
        (Much::Each(many), _) if is_of_it(many) => {}
        (_, Some(unit)) => {
            let write = format!("2 {sold} per 100 {unit}");
            wrong_unit(much.place, &write, unit.plural(), problems);
        }
        (_, None) => wrong_unit(much.place, &format!("2 {sold}"), "each time", problems),
    }
}

/// Whether the purpose that a rule goes by is measured in this unit too.
fn measures(rule: &Also, sold: Unit) -> bool {
    let by = rule.by.as_ref().map(|by| by.value.as_str());
    let mut purposes = Role::ALL.into_iter().map(Role::purpose);
    purposes.any(|one| {
        by == Some(one.role.name()) && one.of == Among::Slabs && one.units.contains(&sold)
    })
}

/// Whether the rule goes by what is dumped, and this is its loose measure.
fn is_loose(rule: &Also, unit: Unit, rules: &Rules) -> bool {
    let by = rule.by.as_ref().map(|by| &by.value);
    let mut dumped = rules.disposal.values();
    unit == Unit::CubicYard && dumped.any(|dump| Some(&dump.item.value) == by)
}

/// Two rules in place of the same for the same slabs would take it off twice.
fn replaced_once(rules: &Rules, problems: &mut Problems) {
    let replacing = || {
        let rules = rules.also.values();
        rules.filter_map(|rule| Some((rule.instead.as_ref()?, rule)))
    };
    for (i, (instead, rule)) in replacing().enumerate() {
        let same = |(other, one): &(&At<String>, &Also)| {
            let by = |rule: &Also| rule.by.as_ref().map(|by| by.value.clone());
            let is_all = |by: Option<String>| by.as_ref() == Some(&instead.value);
            let kind = |rule: &Also| (rule.buy.is_some(), rule.hours.is_some());
            other.value == instead.value
                && (by(one) == by(rule) || is_all(by(one)) || is_all(by(rule)))
                && kind(one) == kind(rule)
                && !apart(rule, one)
        };
        if let Some((first, _)) = replacing().take(i).find(same) {
            let what = format!("another rule is in place of `{}` already", instead.value);
            let problem = Problem::new("replaced-twice", what).at(instead.place);
            problems.push(
                problem
                    .also(first.place, "here for the first time")
                    .help("let `where` of each pick other slabs: a kind, a finish or a name"),
            );
        }
    }
}

/// Whether two rules are for different slabs by what they say.
fn apart(one: &Also, other: &Also) -> bool {
    let said = |rule: &Also| {
        let only = rule.only.as_ref();
        let text = |word: Option<&At<String>>| word.map(|word| word.value.clone());
        [
            text(only.and_then(|only| only.kind.as_ref())),
            text(only.and_then(|only| only.finish.as_ref())),
            text(only.and_then(|only| only.slab.as_ref())),
        ]
    };
    let pairs = said(one).into_iter().zip(said(other));
    pairs
        .into_iter()
        .any(|(one, other)| one.is_some() && other.is_some() && one != other)
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
    let slabs = all_known().filter(|known| known.among == Among::Slabs);
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

/// What the owner wrote, in the unit that a rule goes by; so many of it where nothing makes it one.
fn converted(written: Amount, unit: Unit, usual: u32) -> Amount {
    let usual = Amount::new(usual.into(), unit);
    written.to(unit).unwrap_or(usual)
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
