//! What goes on days after the pour, mostly a sealer: its hours, and the visits for it.

use super::Work;
use super::step::Step;
use super::surfaces::{most, trips};
use super::task::Task;
use super::visit::Visit;
use crate::input::book::Rules;
use crate::input::job::Extra;
use crate::reading::{At, Place};
use crate::trade::order::{List, is_labor};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Each sealer, with the slabs it is put on.
pub(super) fn sealing<'a>(work: &'a Work<'_>, rules: &'a Rules) -> impl Iterator<Item = Task> + 'a {
    let sealers = rules.sealers.iter();
    sealers.filter_map(|(name, sealer)| {
        let parts = work.of_each(|slab, measured| {
            let is_sealed = slab.seal.as_ref().is_some_and(|seal| seal.value == *name);
            is_sealed.then(|| measured.area.clone())
        });
        let hours = sealer.hours.clone()?;
        let task = Task::rated(format!("seal {name}"), Step::Seal, parts).at(hours);
        Some(task.waiting(Some(&sealer.after)))
    })
}

/// Something that goes on so many days after a pour.
struct Due<'a> {
    after: u32,
    pour: usize,
    name: &'a str,
    trips: At<Amount>,
}

/// One visit for all that goes on so many days after a pour, also after later pours that are placed
/// before the first is due. What the takeoff adds goes on after the last pour.
pub(super) fn visits(work: &Work<'_>, extras: &[&Extra], list: &List<'_>) -> Vec<Visit> {
    let days = list.by.pours;
    let day = |pour: usize| days.get(pour).copied();
    let slabs = work.takeoff.slabs.iter();
    let sealed = slabs.filter_map(|slab| {
        let name = &slab.seal.as_ref()?.value;
        let sealer = list.by.rules.sealers.get(name)?;
        Some(Due {
            after: sealer.after.value.0,
            pour: slab.placement,
            name,
            trips: sealer.trips.clone(),
        })
    });
    let pours = work.takeoff.pours().map(|(pour, _)| pour);
    let last = pours.max_by_key(|pour| (day(*pour), *pour));
    let added = extras.iter().filter_map(|extra| {
        let after = added_after(extra, list.by.rules)?;
        Some(Due {
            after: after.0,
            pour: last?,
            name: &extra.name.value,
            trips: At::new(Amount::new(1.into(), Unit::Trip), after.1),
        })
    });
    let mut due: Vec<_> = sealed
        .chain(added)
        .filter_map(|due| Some((due.after, day(due.pour)?, due)))
        .collect();
    due.sort_by_key(|(after, poured, due)| (*after, *poured, due.pour));
    let mut visits = Vec::new();
    let mut rest = &due[..];
    while let Some(((after, poured, _), _)) = rest.split_first() {
        let until = poured.plus(i64::from(*after));
        let with = rest.partition_point(|(wait, day, _)| wait == after && *day <= until);
        let (here, later) = rest.split_at(with);
        rest = later;
        let here: Vec<_> = here.iter().map(|(.., due)| due).collect();
        visits.push(visit(*after, &here));
    }
    visits
}

/// Days from the pour until an item that the takeoff adds goes on, and where the book says so.
fn added_after(extra: &Extra, rules: &Rules) -> Option<(u32, Place)> {
    let selling = rules.selling.get(&extra.name.value)?;
    let after = selling.after.as_ref()?;
    (!is_labor(extra, rules)).then_some((after.value.0, after.place))
}

fn visit(after: u32, here: &[&Due<'_>]) -> Visit {
    let mut pours: Vec<usize> = here.iter().map(|due| due.pour).collect();
    pours.dedup();
    let numbers: Vec<String> = pours.iter().map(|pour| (pour + 1).to_string()).collect();
    let several = if pours.len() == 1 { "pour" } else { "pours" };
    let asked: Vec<Quantity> = here.iter().map(|due| trips(due.name, &due.trips)).collect();
    Visit {
        wait: Some(after),
        asked: most(
            "the most any sealer asks for that goes on so many days after a pour, of pours before the first is due",
            format!(
                "sealing visits, {several} {}, day {after}",
                numbers.join(" and ")
            ),
            asked,
        ),
        pours,
        ..Visit::after(0, Step::Seal, None)
    }
}
