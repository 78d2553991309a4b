//! Hours and visits of finishes: the work itself, and coming back for it after the pour.

use rust_decimal::Decimal;

use super::Work;
use super::covers::cover_visits;
use super::step::Step;
use super::task::Task;
use super::visit::Visit;
use crate::input::book::Rules;
use crate::input::business::{DayCount, SetLids};
use crate::input::job::SetBox;
use crate::reading::At;
use crate::trade::measure::{Face, faces};
use crate::trade::order::also::{Job, comes_back};
use crate::trade::order::{List, Parts, Section};
use crate::trade::term::{largest, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Each finish, with the faces it is given: by hours of its own, or by the rate of its name.
pub(super) fn finishing<'a>(work: &Work<'a>, rules: &'a Rules) -> impl Iterator<Item = Task> + 'a {
    let faces = faces(work.takeoff, work.slabs);
    let mut finishes: Vec<&str> = faces.iter().map(|face| face.finish).collect();
    finishes.sort_unstable();
    finishes.dedup();
    let takeoff = work.takeoff;
    finishes.into_iter().map(move |finish| {
        let is_its =
            |face: &&Face<'_>| face.finish == finish && !takeoff.slabs[face.slab].is_step();
        let parts = faces.iter().filter(is_its);
        let parts: Parts = parts
            .map(|face| (Section::Slab(face.slab), face.area.clone()))
            .collect();
        let task = Task::rated(format!("finish {finish}"), Step::Place, parts);
        let known = rules.finishes.get(finish);
        match known.and_then(|known| known.hours.clone()) {
            Some(hours) => task.at(hours),
            None => task,
        }
    })
}

/// What the crew may come back for after each pour: one visit serves all finishes.
pub(super) fn visits(work: &Work<'_>, list: &List<'_>) -> Vec<Visit> {
    let rules = list.by.rules;
    let faces = faces(work.takeoff, work.slabs);
    let job = Job {
        takeoff: work.takeoff,
        slabs: work.slabs,
        removals: &[],
        orders: work.orders,
    };
    let mut visits: Vec<Visit> = Vec::new();
    for pour in 0..work.takeoff.placements.len() {
        let is_here = |slab: usize| work.takeoff.slabs[slab].placement == pour;
        let of_pour = faces.iter().filter(|face| is_here(face.slab));
        let finishes = of_pour.filter_map(|face| {
            let finish = rules.finishes.get(face.finish)?;
            Some(trips(face.finish, &finish.trips))
        });
        let finishing = most(
            "the most any finish of the pour asks for",
            format!("finishing visits, pour {}", pour + 1),
            finishes.collect(),
        );
        visits.extend(finishing.map(|asked| Visit::after(pour, Step::Finish, Some(asked))));
        let by_rules = comes_back(job, rules, pour).then(|| {
            let rule = "one for all work of your own rules that is done on return";
            let name = format!("visits by your rules, pour {}", pour + 1);
            Quantity::by(rule, name, Unit::Trip, number(1))
        });
        visits.push(Visit::after(pour, Step::Return, by_rules));
    }
    visits.extend(cover_visits(work, list.by));
    visits
}

/// One visit for all lids on order, after everything else.
pub(super) fn lid_visit(work: &Work<'_>, list: &List<'_>) -> Option<Visit> {
    let mut boxes = work.takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    boxes.any(SetBox::waits_for_lid).then(|| {
        let asked = (list.by.crew.lids == SetLids::ByThemselves).then(|| {
            let rule = "one for all lids on order";
            Quantity::by(rule, "visits for lids", Unit::Trip, number(1))
        });
        let pours = work.takeoff.pours().map(|(pour, _)| pour).collect();
        Visit {
            pours,
            ..Visit::after(0, Step::Lid, asked)
        }
    })
}

/// All visits that are asked for; none where none is.
pub(super) fn asked(visits: &[Visit], list: &List<'_>) -> Option<Quantity> {
    // In one sum lids have a trip of their own.
    let is_apart = list.by.crew.day_count.value == DayCount::ByTheJob;
    let visits = visits
        .iter()
        .filter(|one| !(is_apart && one.step == Step::Lid));
    let asked: Vec<&Quantity> = visits.filter_map(|one| one.asked.as_ref()).collect();
    if asked.is_empty() {
        return None;
    }
    Some(list.sets.settle(Quantity::by(
        "visits after the pours",
        "return trips",
        Unit::Trip,
        sum(asked),
    )))
}

pub(super) fn trips(name: &str, trips: &At<Amount>) -> Quantity {
    let much = Amount::new(trips.value.value, Unit::Trip);
    Quantity::given(format!("trips for {name}"), much, trips.place)
}

pub(super) fn most(rule: &'static str, name: String, mut trips: Vec<Quantity>) -> Option<Quantity> {
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
