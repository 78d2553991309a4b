//! The hours that are charged, as lines of the cost.

use super::Crew;
use crate::input::book::Role;
use crate::input::business::LaborLines;
use crate::trade::order::{List, Need, NeedItem, Shares, whole};
use crate::trade::term::{of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn charge(crew: &Crew, shares: Shares, list: &mut List<'_>) {
    if crew.charged.value().is_zero() {
        return;
    }
    if let Some(item) = list.role(Role::Labor) {
        let parts = match list.by.crew.labor_lines {
            LaborLines::One => vec![(crew.charged.clone(), shares)],
            LaborLines::ByTask => by_task(crew, shares),
        };
        list.needs
            .extend(parts.into_iter().map(|(quantity, shares)| Need {
                item: NeedItem::Item(item.clone()),
                quantity,
                placement: None,
                shares,
            }));
    }
    let trips = Role::Trip.purpose();
    list.buy_for_purpose(
        Role::Trip,
        trips.called,
        trips.by,
        whole(crew.trips.clone()),
    );
}

/// A line a task; what is charged beside them, travel and the rounding of days, is the last.
fn by_task(crew: &Crew, shares: Shares) -> Vec<(Quantity, Shares)> {
    let tasks = crew.tasks.iter();
    let mut lines: Vec<(Quantity, Shares)> = tasks
        .map(|task| (task.hours.clone(), task.shares.clone()))
        .collect();
    let tasks = Quantity::by(
        "tasks added up",
        "hours of tasks",
        Unit::Hour,
        sum(crew.tasks.iter().map(|task| &task.hours)),
    );
    let rest = Quantity::by(
        "charged hours − hours of tasks: travel, set-up, waiting, days up to the owner's step",
        "other labor",
        Unit::Hour,
        of(&crew.charged) - &tasks,
    );
    if !rest.value().is_zero() {
        lines.push((rest, shares));
    }
    lines
}
