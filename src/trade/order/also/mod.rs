//! The owner's own rules at work: what follows from what the job has.
//!
//! A rule is followed like what is built in: it buys through the same list, its hours are a task
//! like any other, and what it replaces goes down by what it goes by.

mod by;

pub(in crate::trade) use by::{Job, Replaced};

use by::{Gone, Group, Made, counted_in};

use super::{List, Parts, Section, haul};
use crate::input::book::{Also, Rules, Stage, in_order, is_late};
use crate::input::phrases::{Begun, Effort, Much, Ratio};
use crate::reading::At;
use crate::trade::term::{Term, largest, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Work that a rule brings.
pub(in crate::trade) struct AlsoDone<'a> {
    pub name: &'a str,
    pub stage: Stage,
    pub parts: Parts,
    pub rate: At<Ratio>,
}

/// What of the built-in purposes and tasks the owner's rules are for.
pub(in crate::trade) fn replaced(job: Job<'_>, rules: &Rules) -> Vec<Replaced> {
    let rules = rules.also.iter();
    rules
        .filter_map(|(name, rule)| job.replaced(name, rule))
        .collect()
}

/// What of a purpose is left beside the owner's rules that buy.
pub(in crate::trade) fn left_to_buy(name: &str, parts: Parts, replaced: &[Replaced]) -> Parts {
    left(
        parts,
        replaced
            .iter()
            .filter(|one| one.buys && one.instead == name),
    )
}

/// What of a task is left beside the owner's rules that have hours.
pub(in crate::trade) fn left_to_do(name: &str, parts: Parts, replaced: &[Replaced]) -> Parts {
    left(
        parts,
        replaced
            .iter()
            .filter(|one| one.works && one.instead == name),
    )
}

fn left<'a>(mut parts: Parts, replaced: impl Iterator<Item = &'a Replaced>) -> Parts {
    for one in replaced {
        let left = parts.into_iter();
        parts = match &one.parts {
            Gone::Part(by) => left
                .filter_map(|(section, part)| less(section, part, by))
                .collect(),
            Gone::In { slabs, everywhere } => left
                .filter(|(section, _)| match section {
                    Section::Slab(i) => !slabs.contains(i),
                    Section::Removal | Section::Extras | Section::Whole => !everywhere,
                })
                .collect(),
        };
    }
    parts
}

/// A part less what a rule is for in the same part of the job.
fn less(section: Section, part: Quantity, by: &Parts) -> Option<(Section, Quantity)> {
    let same: Vec<&Quantity> = by
        .iter()
        .filter(|(other, _)| *other == section || *other == Section::Whole)
        .map(|(_, quantity)| quantity)
        .collect();
    if same.is_empty() {
        return Some((section, part));
    }
    let unit = part.amount().unit;
    let gone = sum(same.iter().copied());
    // What is counted otherwise replaces it whole.
    if same.iter().any(|one| one.amount().unit != unit) || part.value() <= gone.value() {
        return None;
    }
    let rule = "less what a rule of your own is for";
    let left = Quantity::by(rule, part.named(), unit, of(&part) - gone);
    Some((section, left))
}

/// Whether a rule brings the crew back to this pour.
pub(in crate::trade) fn comes_back(job: Job<'_>, rules: &Rules, pour: usize) -> bool {
    let back = |(name, rule): (&String, &Also)| {
        let works = rule.hours.is_some() && rule.stage == Stage::Return;
        works && job.is_in(pour, name, rule)
    };
    rules.also.iter().any(back)
}

/// Buys what the rules say, but for what follows from trips; answers what the customer reads.
pub(in crate::trade) fn list(job: Job<'_>, list: &mut List<'_>) -> Vec<String> {
    let mut says = Vec::new();
    let rules = list.by.rules;
    for (name, rule) in in_order(&rules.also) {
        if is_late(rule, rules) {
            continue;
        }
        let groups = job.groups(name, rule, made(rule, list));
        if !groups.is_empty() {
            says.extend(rule.says.clone());
        }
        buy(name, rule, groups, job, list);
    }
    says
}

/// The hours of every rule that has some.
pub(in crate::trade) fn done<'a>(job: Job<'_>, list: &List<'a>) -> Vec<AlsoDone<'a>> {
    let rules: &'a Rules = list.by.rules;
    let rules = in_order(&rules.also).into_iter();
    rules
        .filter_map(|(name, rule)| {
            let Some(hours) = &rule.hours else {
                return of_item(name, rule, list);
            };
            let rate = hours.clone().map(|effort| match effort {
                Effort::For(ratio) => ratio,
                Effort::Each(much) => {
                    let per = Amount::new(1.into(), Unit::Plain);
                    Ratio { much, per }
                }
            });
            let groups = job.groups(name, rule, made(rule, list)).into_iter();
            let parts = groups.flat_map(|group| group.parts).collect();
            let stage = rule.stage;
            Some(AlsoDone {
                name,
                stage,
                parts,
                rate,
            })
        })
        .collect()
}

fn made<'l>(rule: &Also, list: &'l List<'_>) -> Made<'l> {
    Made {
        needs: &list.needs,
        purposes: &list.purposes,
        sold: rule.buy.as_ref().and_then(|item| list.unit(item)),
    }
}

/// The hours that come with the item a rule buys, where the rule has none of its own.
fn of_item<'a>(name: &'a str, rule: &Also, list: &List<'a>) -> Option<AlsoDone<'a>> {
    let item = rule.buy.as_ref()?;
    let rate = list.by.rules.selling.get(&item.value)?.work.clone()?;
    let bought = list.needs.iter().filter(|need| {
        let rest = need.quantity.name().strip_prefix(name);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(", pour "))
    });
    let parts = bought.map(|need| (Section::Whole, need.quantity.clone()));
    let (stage, parts) = (rule.stage, parts.collect());
    Some(AlsoDone {
        name,
        stage,
        parts,
        rate,
    })
}

/// Buys what follows from the crew's time: `of_crew` says how much there is of what a rule goes by.
pub(in crate::trade) fn after_crew<'q>(
    job: Job<'_>,
    of_crew: impl Fn(&Also) -> Option<&'q Quantity>,
    list: &mut List<'_>,
) {
    let rules = list.by.rules;
    for (name, rule) in in_order(&rules.also) {
        if !is_late(rule, rules) {
            continue;
        }
        let groups = match of_crew(rule) {
            Some(quantity) => vec![Group::of(None, vec![(Section::Whole, quantity.clone())])],
            None => job.groups(name, rule, made(rule, list)),
        };
        buy(name, rule, groups, job, list);
    }
}

fn buy(name: &str, rule: &Also, groups: Vec<Group>, job: Job<'_>, list: &mut List<'_>) {
    let pours = job.takeoff.placements.len();
    let Some(item) = &rule.buy else { return };
    let Some(unit) = list.unit(item) else { return };
    for group in groups {
        let name = match group.placement {
            Some(pour) if 1 < pours => format!("{name}, pour {}", pour + 1),
            _ => name.to_owned(),
        };
        let much = match (&rule.each, &rule.much) {
            (Some(each), _) => {
                let by = rule.by.as_ref().map_or("", |by| &by.value);
                let loose = haul::loose_for(by, job.removals, list.by.rules);
                begun(&name, unit, each, &group.parts, &loose)
            }
            (None, Some(much)) => {
                let all = sum(group.parts.iter().map(|(_, part)| part));
                let (rule, term) = shared(all, unit, much);
                Quantity::by(rule, name.clone(), unit, term)
            }
            (None, None) => match &group.parts[..] {
                [(_, one)] => counted_in(unit, one),
                parts => {
                    let all = sum(parts.iter().map(|(_, part)| part));
                    Quantity::by("added up", name.clone(), unit, all)
                }
            },
        };
        let rule = "by a rule of your own";
        list.buy_for(item, name, rule, much, group.placement, group.shares);
    }
}

/// So much for so much, or so many each time.
fn shared(all: Term, unit: Unit, much: &At<Much>) -> (&'static str, Term) {
    match much.value {
        Much::For(ratio) => {
            let rate = much.clone().map(|_| Ratio {
                much: Amount::new(ratio.much.value, unit),
                per: ratio.per,
            });
            let names = ("so much", "for each");
            ("so much for each", all.at_rate(names, &rate))
        }
        Much::Each(many) => {
            let many = Amount::new(many.value, unit);
            let many = Quantity::given("each time", many, much.place);
            ("so many each time", all * &many)
        }
    }
}

/// One for so much begun; of what is hauled, the loose yards may be full before the weight is.
fn begun(name: &str, unit: Unit, each: &At<Begun>, parts: &Parts, loose: &[Quantity]) -> Quantity {
    let pieces = |all: Term, much: Amount| {
        let each = Quantity::given("for each", much, each.place);
        (all / &each).whole()
    };
    let much = pieces(sum(parts.iter().map(|(_, part)| part)), each.value.much);
    let (rule, many) = match each.value.or {
        None => ("one for so much begun", much),
        Some(or) => (
            "one for so much begun, by weight or by loose yards, whichever takes more",
            largest(vec![much, pieces(sum(loose), or)]),
        ),
    };
    Quantity::by(rule, name.to_owned(), unit, many)
}
