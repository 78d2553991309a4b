//! The owner's own rules where the crew's time is known, and the names of all that they can go by.

use super::crew::Crew;
use super::order::also::{self, Job};
use super::order::{List, Parts};
use super::term::sum;
use super::working::Quantity;
use crate::input::book::{Also, Among, Known, OnceA, all_known, known};
use crate::values::Amount;

/// Buys what follows from the crew's trips and time.
pub(super) fn after_crew(job: Job<'_>, crew: &Crew, list: &mut List<'_>) {
    let of_crew = |rule: &Also| match (&rule.by, &rule.once) {
        (Some(by), _) => of_crew(known(&by.value)?, crew),
        (None, Some(once)) if once.value == OnceA::Trip => Some(&crew.trips),
        (None, _) => None,
    };
    also::after_crew(job, of_crew, list);
}

fn of_crew(known: Known, crew: &Crew) -> Option<&Quantity> {
    match (known.among, known.name) {
        (Among::Crew, "trips") => Some(&crew.trips),
        (Among::Crew, "crew days") => Some(&crew.days),
        (Among::Crew, _) => Some(&crew.worked),
        (Among::Purposes | Among::Slabs | Among::Removals | Among::Orders, _) => None,
    }
}

/// Every quantity that a rule can go by, with all that this job has of it.
pub(super) fn names(
    job: Job<'_>,
    crew: &Crew,
    purposes: &[(&'static str, Parts)],
) -> Vec<(Known, Amount)> {
    let all = all_known().map(|known| {
        let found = match of_crew(known, crew) {
            Some(quantity) => vec![quantity.clone()],
            None => job.all_of(known, purposes),
        };
        (known, Amount::new(sum(&found).value(), known.unit))
    });
    all.collect()
}
