//! The owner's own rules where the crew's time is known, and the names of all that they can go by.

use super::crew::Crew;
use super::order::also::{Job, buy_whole};
use super::order::{List, Parts};
use super::term::sum;
use super::working::Quantity;
use crate::input::book::{Among, KNOWN, Known, OnceA, in_order, known};
use crate::values::Amount;

/// Buys what follows from the crew's trips and time.
pub(super) fn after_crew(crew: &Crew, list: &mut List<'_>) {
    for (name, rule) in in_order(&list.by.rules.also) {
        let known = rule.by.as_ref().and_then(|by| known(&by.value));
        let quantity = match (known, &rule.once) {
            (Some(known), _) => of_crew(known, crew),
            (None, Some(once)) if once.value == OnceA::Trip => Some(&crew.trips),
            (None, _) => None,
        };
        if let Some(quantity) = quantity {
            buy_whole(name, rule, quantity, list);
        }
    }
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
    let all = KNOWN.iter().map(|known| {
        let found = match of_crew(*known, crew) {
            Some(quantity) => vec![quantity.clone()],
            None => job.all_of(*known, purposes),
        };
        (*known, Amount::new(sum(&found).value(), known.unit))
    });
    all.collect()
}
