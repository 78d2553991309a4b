//! Does a figure that was set for the job as quoted also stand where an option would change it?

use std::collections::{BTreeMap, BTreeSet};

use rust_decimal::Decimal;

use super::Case;
use crate::costing::Priced;
use crate::reading::Problem;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, rounding};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    if case.takeoff.head.sets.is_empty() || case.offer.by_choice.len() < 2 {
        return Vec::new();
    }
    let quoted = computed(case.offer.quoted());
    let others: Vec<_> = case
        .offer
        .by_choice
        .iter()
        .filter(|(choice, _)| **choice != case.offer.as_quoted)
        .map(|(choice, priced)| (choice, computed(priced)))
        .collect();
    let mut answers = Vec::new();
    for set in &case.takeoff.head.sets {
        let name = &set.name.value;
        let Some(before) = quoted.get(name) else {
            continue;
        };
        let other = others.iter().find_map(|(choice, found)| {
            let after = found.get(name).filter(|after| differs(before, after))?;
            Some((choice, after))
        });
        let Some((choice, after)) = other else {
            continue;
        };
        let taken = choice.taken(&case.takeoff.options).into_iter();
        let titles: Vec<String> = taken
            .map(|option| format!("`{}`", option.name.value))
            .collect();
        let message = format!(
            "`{name}` is `{}` in every choice, but with {} it would be computed as {} and not as {}",
            set.to.value,
            titles.join(" and "),
            short(*after),
            short(*before),
        );
        answers.push(Problem::new("set-with-option", message).at(set.to.place).help(
            "if the figure was meant for the job as quoted only, the price of that choice is off by the difference",
        ));
    }
    answers
}

/// What every set quantity would have been.
fn computed(priced: &Priced) -> BTreeMap<String, Amount> {
    let (mut seen, mut found) = (BTreeSet::new(), BTreeMap::new());
    for root in priced.needs.roots() {
        gather(&root, &mut seen, &mut found);
    }
    found
}

fn gather(quantity: &Quantity, seen: &mut BTreeSet<String>, found: &mut BTreeMap<String, Amount>) {
    let given = matches!(quantity.working(), Working::Given(_));
    if given || !seen.insert(quantity.name().to_owned()) {
        return;
    }
    let below = match quantity.working() {
        Working::Set { computed, .. } => {
            found.insert(quantity.name().to_owned(), computed.amount());
            computed.parts()
        }
        _ => quantity.parts(),
    };
    for part in below {
        gather(&part, seen, found);
    }
}

/// By a hundredth at least; less than that nobody would have set.
fn differs(one: &Amount, other: &Amount) -> bool {
    Decimal::new(1, 2) <= (one.value - other.value).abs()
}

fn short(amount: Amount) -> Amount {
    Amount::new(rounding::to_places(amount.value, 2), amount.unit)
}
