//! What is laid over concrete or keeps it wet, and the visits for it, where the book rates them.

use super::Work;
use super::step::Step;
use super::visit::Visit;
use crate::input::book::{Curing, Role, Rules};
use crate::input::job::Slab;
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
    slab.curing.value == Curing::Cover || is_under_blankets(slab, by)
}

fn is_under_blankets(slab: &Slab, by: Policies<'_>) -> bool {
    let day = by.pours.get(slab.placement);
    by.rules.roles.contains_key(&Role::Blankets)
        && day.is_some_and(|day| season::is_cold(slab, *day, by.cure, by.rules))
}

/// Whole days after it that a pour stays under blankets; none where it is not laid under any.
pub(super) fn days_under(work: &Work<'_>, pour: usize, by: Policies<'_>) -> Option<u32> {
    let slabs = work.takeoff.slabs.iter();
    let cold = slabs.filter(|slab| slab.placement == pour && is_under_blankets(slab, by));
    let mixes = cold.filter_map(|slab| by.rules.mixes.get(&slab.mix.value));
    mixes
        .map(|mix| season::protected_days(mix.cement.value))
        .max()
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

/// The visits of a job whose wetting is rated; covers come off with the forms.
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
    found
}
