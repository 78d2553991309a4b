//! Rules one after another: what a rule buys is there before another goes by it.

use std::collections::BTreeMap;

use super::{Also, OnceA, known};
use crate::input::book::roles::{Among, Role};
use crate::input::book::rules::Rules;
use crate::reading::{Named, Problem, Problems};

/// Every rule with its name, those first by which others go.
pub fn in_order(rules: &Named<Also>) -> Vec<(&str, &Also)> {
    sorted(rules).unwrap_or_default()
}

/// Whether a rule is followed when the crew's time is known: it goes by trips, days or hours, by
/// what is bought for them, or by another rule that does.
pub fn is_late(rule: &Also, rules: &Rules) -> bool {
    late(rule, rules, rules.also.len())
}

fn late(rule: &Also, rules: &Rules, deep: usize) -> bool {
    let Some(by) = &rule.by else {
        return rule
            .once
            .as_ref()
            .is_some_and(|once| once.value == OnceA::Trip);
    };
    if let Some(known) = known(&by.value) {
        return known.among == Among::Crew;
    }
    let of_crew = [Role::Labor, Role::Trip, Role::BreakingMachine];
    let roles = of_crew
        .iter()
        .filter_map(|role| rules.roles.get(role)?.value.as_ref());
    let hired = rules.buggy.iter().map(|buggy| &buggy.item.value);
    if roles.chain(hired).any(|item| *item == by.value) {
        return true;
    }
    let mut others = rules.also.iter().filter(|(name, one)| {
        let buys = one.buy.as_ref().is_some_and(|item| item.value == by.value);
        **name == by.value || buys
    });
    deep > 0 && others.any(|(_, one)| late(one, rules, deep - 1))
}

/// Reports a rule that comes round to itself, with the way it takes.
pub(super) fn check(rules: &Named<Also>, problems: &mut Problems) {
    let Err(way) = sorted(rules) else { return };
    let by = way.first().and_then(|name| rules.get(*name)?.by.as_ref());
    let Some((first, by)) = way.first().zip(by) else {
        return;
    };
    let way: Vec<String> = way.iter().map(|name| format!("`{name}`")).collect();
    let message = format!("`{first}` comes round to itself");
    let help = format!(
        "let one of them go by something else: {} goes by `{first}`",
        way.join(" goes by ")
    );
    problems.push(Problem::new("goes-round", message).at(by.place).help(help));
}

/// The rules in order, or names of which each goes by the next and the last by the first.
fn sorted(rules: &Named<Also>) -> Result<Vec<(&str, &Also)>, Vec<&str>> {
    let mut done: BTreeMap<&str, bool> = BTreeMap::new();
    let mut order = Vec::new();
    for name in rules.keys() {
        visit(name, rules, &mut done, &mut Vec::new(), &mut order)?;
    }
    Ok(order)
}

fn visit<'a>(
    name: &'a str,
    rules: &'a Named<Also>,
    done: &mut BTreeMap<&'a str, bool>,
    way: &mut Vec<&'a str>,
    order: &mut Vec<(&'a str, &'a Also)>,
) -> Result<(), Vec<&'a str>> {
    match done.get(name) {
        Some(true) => return Ok(()),
        Some(false) => {
            let begin = way.iter().position(|one| *one == name).unwrap_or(0);
            return Err(way.split_off(begin));
        }
        None => {}
    }
    let Some(rule) = rules.get(name) else {
        return Ok(());
    };
    done.insert(name, false);
    way.push(name);
    if let Some(by) = &rule.by {
        for (other, one) in rules.iter() {
            let buys = one.buy.as_ref().is_some_and(|item| item.value == by.value);
            if *other == by.value || buys {
                visit(other, rules, done, way, order)?;
            }
        }
    }
    way.pop();
    done.insert(name, true);
    order.push((name, rule));
    Ok(())
}
