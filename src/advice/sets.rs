//! Does every `set` change something?

use std::collections::BTreeSet;

use super::Case;
use crate::reading::Problem;
use crate::trade::working::{Quantity, Working};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    if case.takeoff.head.sets.is_empty() {
        return Vec::new();
    }
    let (mut seen, mut idle) = (BTreeSet::new(), Vec::new());
    for root in case.offer.quoted().needs.roots() {
        gather(&root, &mut seen, &mut idle);
    }
    let sets = case.takeoff.head.sets.iter();
    let answers = sets
        .filter(|set| idle.contains(&set.name.value))
        .map(|set| {
            let message = format!(
                "setting `{}` to `{}` changes nothing",
                set.name.value, set.to.value
            );
            Problem::new("idle-set", message).at(set.to.place).help(
                "that is what is computed anyway; take it out, so that the figure follows the job",
            )
        });
    answers.collect()
}

/// Names of set quantities that were computed the same, each quantity looked at once.
fn gather(quantity: &Quantity, seen: &mut BTreeSet<String>, idle: &mut Vec<String>) {
    let given = matches!(quantity.working(), Working::Given(_));
    if given || !seen.insert(quantity.name().to_owned()) {
        return;
    }
    if let Working::Set { computed, .. } = quantity.working()
        && computed.value() == quantity.value()
    {
        idle.push(quantity.name().to_owned());
    }
    // What was computed has the same name, and parts that may be set themselves.
    let below = match quantity.working() {
        Working::Set { computed, .. } => computed.parts(),
        _ => quantity.parts(),
    };
    for part in below {
        gather(&part, seen, idle);
    }
}
