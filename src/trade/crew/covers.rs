//! What is laid over concrete or keeps it wet, and the visits for it, where the book rates them.

use super::Work;
use super::step::Step;
use super::visit::Visit;
use crate::input::book::{Curing, Role, Rules};
use crate::trade::curing::season;
use crate::trade::order::{Parts, Policies, Section};
use crate::trade::term::number;
use crate::trade::working::Quantity;
use crate::values::Unit;

/// How long concrete is kept wet; common practice, no source.
const WET_DAYS: i64 = 7;

/// Whether the crew comes for every wetting, by the book's rate.
pub(super) fn by_the_visit(rules: &Rules) -> bool {
    let rate = rules.rates.get("keep wet");
    rate.is_some_and(|rate| rate.value.per.unit == Unit::Trip)
}

/// A visit a day to each pour with a slab that is kept wet.
pub(super) fn wetting(work: &Work<'_>) -> Parts {
    let is_wet = |slab: usize| work.takeoff.slabs[slab].curing.value == Curing::Wet;
    let rule = "a visit a day for a week: common practice, no source";
    visits(work, is_wet, "wetting visits", rule, WET_DAYS)
}

/// Whether a slab lies under something that is taken off again: its cover, or blankets against frost.
fn is_covered(work: &Work<'_>, slab: usize, by: Policies<'_>) -> bool {
    let slab = &work.takeoff.slabs[slab];
    slab.curing.value == Curing::Cover
        || by.rules.roles.contains_key(&Role::Blankets)
            && by
                .pours
                .get(slab.placement)
                .is_some_and(|day| season::is_cold(slab, *day, by.cure, by.rules))
}

/// The surface of each slab that lies under something; laid once, whatever lies on it.
pub(super) fn covered(work: &Work<'_>, by: Policies<'_>) -> Parts {
    let slabs = work.slabs.iter().enumerate();
    let covered = slabs.filter(|(i, _)| is_covered(work, *i, by));
    covered
        .map(|(i, found)| (Section::Slab(i), found.surface()))
        .collect()
}

/// A visit to each pour where something has to be lifted.
pub(super) fn lifting(work: &Work<'_>, by: Policies<'_>) -> Parts {
    let rule = "one for each pour that lies under a cover or blankets";
    visits(
        work,
        |slab| is_covered(work, slab, by),
        "lifting visits",
        rule,
        1,
    )
}

/// So many visits to each pour that has such a slab, for its first one.
fn visits(
    work: &Work<'_>,
    is_meant: impl Fn(usize) -> bool,
    name: &str,
    rule: &'static str,
    many: i64,
) -> Parts {
    let pours = work.takeoff.pours();
    let found = pours.filter_map(|(pour, _)| {
        let mut slabs = 0..work.takeoff.slabs.len();
        let first = slabs.find(|i| work.takeoff.slabs[*i].placement == pour && is_meant(*i))?;
        let name = format!("{name}, pour {}", pour + 1);
        let visits = Quantity::by(rule, name, Unit::Trip, number(many));
        Some((Section::Slab(first), visits))
    });
    found.collect()
}

/// The visits of a job whose wetting and lifting are rated.
pub(super) fn cover_visits(work: &Work<'_>, by: Policies<'_>) -> Vec<Visit> {
    let mut found = Vec::new();
    let mut add = |step, parts: Parts| {
        found.extend(
            parts
                .into_iter()
                .filter_map(|(section, visits)| match section {
                    Section::Slab(i) => {
                        let pour = work.takeoff.slabs[i].placement;
                        Some(Visit::after(pour, step, Some(visits)))
                    }
                    Section::Removal | Section::Extras | Section::Whole => None,
                }),
        );
    };
    if by_the_visit(by.rules) {
        add(Step::Wet, wetting(work));
    }
    if by.rules.rates.get("lift covers").is_some() {
        add(Step::Lift, lifting(work, by));
    }
    found
}
