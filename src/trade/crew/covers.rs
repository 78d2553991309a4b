//! Visits that keep concrete wet, where the book rates them.

use super::Work;
use super::blocks::Step;
use super::surfaces::Visit;
use crate::input::book::{Curing, Rules};
use crate::trade::order::Section;
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
pub(super) fn wetting<'a>(
    work: &'a Work<'_>,
) -> impl Iterator<Item = (usize, Section, Quantity)> + 'a {
    let is_wet = |pour: usize| {
        let slabs = work.takeoff.slabs.iter();
        slabs
            .enumerate()
            .find(move |(_, slab)| slab.placement == pour && slab.curing.value == Curing::Wet)
    };
    work.takeoff.pours().filter_map(move |(pour, _)| {
        let (first, _) = is_wet(pour)?;
        let rule = "a visit a day for a week: common practice, no source";
        let name = format!("wetting visits, pour {}", pour + 1);
        let visits = Quantity::by(rule, name, Unit::Trip, number(WET_DAYS));
        Some((pour, Section::Slab(first), visits))
    })
}

/// The visits of a job that is kept wet by them.
pub(super) fn wetting_visits(work: &Work<'_>, rules: &Rules) -> Vec<Visit> {
    if !by_the_visit(rules) {
        return Vec::new();
    }
    let pours = wetting(work).map(|(pour, _, visits)| Visit {
        step: Step::Wet,
        pours: vec![pour],
        slabs: None,
        wait: None,
        asked: Some(visits),
    });
    pours.collect()
}
