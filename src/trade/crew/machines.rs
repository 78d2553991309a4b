//! Machines hired for the time the crew works with them: a buggy, a breaker.
//!
//! The crew works at once, so the machine is there for the person hours divided
//! by the people; the steps of the hire are those of its item.

use rust_decimal::Decimal;

use super::step::Step;
use super::{Crew, Work, hours_in_a_day, people};
use crate::input::book::{ItemKey, Role};
use crate::input::job::{Breaking, Method};
use crate::reading::At;
use crate::trade::measure::RemovalQuantities;
use crate::trade::order::{List, Section, Shares};
use crate::trade::term::{Term, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// A buggy for each pour that is placed by it, for as long as the crew places with it.
pub(super) fn buggies(work: &Work<'_>, list: &mut List<'_>) {
    let Some(buggy) = &list.by.rules.buggy else {
        return;
    };
    for (placement, _) in work.takeoff.pours() {
        let here = || {
            let orders = work.orders.iter();
            orders.filter(|order| order.by == Method::Buggy && order.placement == placement)
        };
        let hours = sum(here().filter_map(|order| order.placing.as_ref()));
        if hours.value().is_zero() {
            continue;
        }
        let shares = here().flat_map(|order| order.shares.clone());
        let (name, shares) = (format!("buggy, pour {}", placement + 1), shares.collect());
        hire(&buggy.item, name, hours, shares, Some(placement), list);
    }
}

/// The machine that breaks and digs.
pub(super) fn breaker(removals: &[RemovalQuantities], crew: &Crew, list: &mut List<'_>) {
    let by_machine = removals
        .iter()
        .filter(|one| one.breaking == Breaking::Machine);
    let tasks: Vec<&str> = by_machine.map(|one| one.task).collect();
    if tasks.is_empty() {
        return;
    }
    let Some(item) = list.role(Role::BreakingMachine) else {
        return;
    };
    let removing = crew.tasks.iter().filter(|task| task.step == Step::Remove);
    let its = removing.filter(|task| tasks.contains(&task.name.as_str()));
    let hours = sum(its.map(|task| &task.hours));
    let shares = vec![(Section::Removal, Decimal::ONE)];
    hire(
        &item,
        "breaking machine".to_owned(),
        hours,
        shares,
        None,
        list,
    );
}

/// Hires `item` for so many person hours of the crew; a day that is begun is a whole one unless the
/// item is sold in parts of days.
fn hire(
    item: &At<ItemKey>,
    name: String,
    person_hours: Term,
    shares: Shares,
    placement: Option<usize>,
    list: &mut List<'_>,
) {
    let people = people(list.by.crew);
    let selling = list.by.rules.selling.get(&item.value);
    let has_step = selling.is_some_and(|selling| !selling.step.is_zero());
    let (rule, unit, time) = if list.unit(item) == Some(Unit::Hour) {
        ("person hours ÷ people", Unit::Hour, person_hours / &people)
    } else {
        let days = person_hours / (of(&people) * &hours_in_a_day(list.by.crew));
        if has_step {
            let rule = "person hours ÷ (people × a day)";
            (rule, Unit::Day, days)
        } else {
            let rule = "person hours ÷ (people × a day), up to a whole day, since `sold in` names no part of one";
            (rule, Unit::Day, days.whole())
        }
    };
    let time = Quantity::by(rule, format!("{name}, time"), unit, time);
    let rule = "the time the crew works with it, as it is hired";
    list.buy_for(item, name, rule, time, placement, shares);
}
