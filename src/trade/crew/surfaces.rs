//! Hours and visits of finishes and sealers: the work itself, and coming back for it after the pour.

use super::Work;
use super::tasks::TaskName;
use crate::input::book::Rules;
use crate::input::job::Slab;
use crate::input::phrases::Days;
use crate::trade::measure::faces;
use crate::trade::order::{List, Section};
use crate::trade::term::{largest, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};
use rust_decimal::Decimal;

/// A finish with hours of its own, or by the rate of its name.
pub(super) fn finish_task(finish: &str, rules: &Rules) -> TaskName {
    let name = format!("finish {finish}");
    let entry = rules.finishes.get(finish);
    match entry.and_then(|entry| entry.hours.clone()) {
        Some(hours) => TaskName::Item(name, hours),
        None => TaskName::Rated(name),
    }
}

/// Each sealer, with the slabs it is put on.
pub(super) fn sealing(work: &Work<'_>, rules: &Rules) -> Vec<(TaskName, Vec<(Section, Quantity)>)> {
    let sealers = rules.sealers.iter();
    let rated = sealers.filter_map(|(name, sealer)| Some((name, sealer.hours.clone()?)));
    rated
        .map(|(name, hours)| {
            let slabs = work.takeoff.slabs.iter().zip(work.slabs).enumerate();
            let sealed = slabs
                .filter(|(_, (slab, _))| slab.seal.as_ref().is_some_and(|seal| seal.value == *name))
                .map(|(i, (_, measured))| (Section::Slab(i), measured.area.clone()));
            (
                TaskName::Item(format!("seal {name}"), hours),
                sealed.collect(),
            )
        })
        .collect()
}

/// Visits after the pours; none where no finish and no sealer asks for any.
///
/// After each pour one visit serves all finishes, and one all sealers that are due on the same day.
pub(super) fn returns(work: &Work<'_>, list: &List<'_>) -> Option<Quantity> {
    let rules = &list.ways.rules;
    let faces = faces(work.takeoff, work.slabs);
    let mut visits: Vec<Quantity> = Vec::new();
    for pour in 0..work.takeoff.placements.len() {
        let of_pour: Vec<&Slab> = work
            .takeoff
            .slabs
            .iter()
            .map(AsRef::as_ref)
            .filter(|slab| slab.placement == pour)
            .collect();
        let finishes = faces
            .iter()
            .filter(|face| work.takeoff.slabs[face.slab].placement == pour)
            .filter_map(|face| {
                let finish = rules.finishes.get(face.finish)?;
                Some(trips(face.finish, &finish.trips))
            })
            .collect();
        visits.extend(visit(
            "the most any finish of the pour asks for",
            format!("finishing visits, pour {}", pour + 1),
            finishes,
        ));
        let sealed: Vec<_> = of_pour
            .iter()
            .filter_map(|slab| {
                let name = &slab.seal.as_ref()?.value;
                Some((name, rules.sealers.get(name)?))
            })
            .collect();
        let mut days: Vec<Days> = sealed.iter().map(|(_, one)| one.after.value).collect();
        days.sort();
        days.dedup();
        for day in days {
            let due = sealed
                .iter()
                .filter(|(_, sealer)| sealer.after.value == day)
                .map(|(name, sealer)| trips(name, &sealer.trips))
                .collect();
            visits.extend(visit(
                "the most any sealer due on this day asks for",
                format!("sealing visits, pour {}, day {}", pour + 1, day.0),
                due,
            ));
        }
    }
    if visits.is_empty() {
        return None;
    }
    Some(list.sets.settle(Quantity::by(
        "visits after the pours",
        "return trips",
        Unit::Trip,
        sum(&visits),
    )))
}

fn trips(name: &str, trips: &crate::reading::At<Amount>) -> Quantity {
    let much = Amount::new(trips.value.value, Unit::Trip);
    Quantity::given(format!("trips for {name}"), much, trips.place)
}

fn visit(rule: &'static str, name: String, mut trips: Vec<Quantity>) -> Option<Quantity> {
    trips.sort_by(|a, b| a.name().cmp(b.name()));
    trips.dedup_by(|a, b| a.name() == b.name());
    trips.retain(|one| one.value() != Decimal::ZERO);
    let term = match &trips[..] {
        [] => return None,
        [one] => of(one),
        several => largest(several.iter().map(of).collect()),
    };
    Some(Quantity::by(rule, name, Unit::Trip, term))
}
