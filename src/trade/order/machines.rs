//! Machines hired for the time the crew works with them: a buggy, a breaker.
//!
//! The crew works at once, so the machine is there for the person hours divided
//! by the people; the steps of the hire are those of its item.

use rust_decimal::Decimal;

use super::{ConcreteOrder, List, Section};
use crate::input::book::{ItemKey, Role};
use crate::input::job::{Breaking, Method, Takeoff};
use crate::reading::At;
use crate::trade::crew::Crew;
use crate::trade::measure::RemovalQuantities;
use crate::trade::term::{Term, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// A buggy for each pour that is placed by it.
pub(super) fn buggies(
    takeoff: &Takeoff,
    orders: &[ConcreteOrder],
    crew: &Crew,
    list: &mut List<'_>,
) {
    let Some(buggy) = list.ways.rules.buggy.clone() else {
        return;
    };
    let placing = crew
        .tasks
        .iter()
        .find(|task| task.name == "place by buggy")
        .map(|task| task.hours.clone());
    let Some(placing) = placing else { return };
    let by_buggy = |order: &&ConcreteOrder| order.by == Method::Buggy;
    let all = Quantity::by(
        "orders placed by buggy added up",
        "placed by buggy",
        Unit::CubicYard,
        sum(orders.iter().filter(by_buggy).map(|order| &order.order)),
    );
    for (placement, _) in takeoff.pours() {
        let of_pour: Vec<&ConcreteOrder> = orders
            .iter()
            .filter(by_buggy)
            .filter(|order| order.placement == placement)
            .collect();
        let here = Quantity::by(
            "its orders added up",
            format!("placed by buggy, pour {}", placement + 1),
            Unit::CubicYard,
            sum(of_pour.iter().map(|order| &order.order)),
        );
        if here.value().is_zero() {
            continue;
        }
        let hours = if here.value() == all.value() {
            of(&placing)
        } else {
            of(&placing) * &here / &all
        };
        let shares = of_pour.iter().flat_map(|order| order.shares.clone());
        hire(
            &buggy.item,
            &format!("buggy, pour {}", placement + 1),
            hours,
            shares.collect(),
            Some(placement),
            list,
        );
    }
}

/// The machine that breaks and digs.
pub(super) fn breaker(removals: &[RemovalQuantities], crew: &Crew, list: &mut List<'_>) {
    let tasks: Vec<&str> = removals
        .iter()
        .filter(|one| one.breaking == Breaking::Machine)
        .map(|one| one.task)
        .collect();
    let hours: Vec<&Quantity> = crew
        .tasks
        .iter()
        .filter(|task| tasks.contains(&task.name.as_str()))
        .map(|task| &task.hours)
        .collect();
    if tasks.is_empty() {
        return;
    }
    let Some(item) = list.role(Role::BreakingMachine) else {
        return;
    };
    hire(
        &item,
        "breaking machine",
        sum(hours),
        vec![(Section::Removal, Decimal::ONE)],
        None,
        list,
    );
}

/// Hires `item` for so many person hours of the crew.
fn hire(
    item: &At<ItemKey>,
    name: &str,
    person_hours: Term,
    shares: Vec<(Section, Decimal)>,
    placement: Option<usize>,
    list: &mut List<'_>,
) {
    let policy = list.ways.crew;
    let people = Quantity::given("people", policy.people.value, policy.people.place);
    let day = Quantity::given(
        "hours in a day",
        Amount::new(policy.hours_in_a_day.value.value, Unit::Hour),
        policy.hours_in_a_day.place,
    );
    let unit = list.ways.rules.selling.get(&item.value).map(|one| one.unit);
    let (rule, unit, time) = if unit == Some(Unit::Hour) {
        ("person hours ÷ people", Unit::Hour, person_hours / &people)
    } else {
        (
            "person hours ÷ (people × a day)",
            Unit::Day,
            person_hours / (of(&people) * &day),
        )
    };
    let time = Quantity::by(rule, format!("{name}, time"), unit, time);
    list.buy_for(
        item,
        name,
        "the time the crew works with it, as it is hired",
        time,
        placement,
        shares,
    );
}
