//! The owner's last word: a computed quantity overruled by name.

use crate::input::job::SetTo;
use crate::reading::{Problem, Problems, suggest};
use crate::trade::{Quantity, Working};

/// The overrides of a takeoff.
#[derive(Clone, Copy, Debug)]
pub struct Sets<'a>(pub &'a [SetTo]);

impl Sets<'_> {
    /// The quantity, or what the owner set it to; what depends on it follows.
    pub fn settle(self, quantity: Quantity) -> Quantity {
        match self.0.iter().find(|set| set.name.value == quantity.name()) {
            Some(set) => quantity.set(set.to.value, set.because.clone(), set.to.place),
            None => quantity,
        }
    }
}

/// Reports every override that no quantity of the job answers to.
pub fn check(sets: &[SetTo], roots: &[Quantity], problems: &mut Problems) {
    if sets.is_empty() {
        return;
    }
    let mut computed: Vec<Quantity> = Vec::new();
    let mut seen = std::collections::BTreeSet::new();
    for root in roots {
        gather(root, &mut seen, &mut computed);
    }
    for set in sets {
        let Some(quantity) = computed
            .iter()
            .find(|quantity| quantity.name() == set.name.value)
        else {
            let problem = Problem::new(
                "unknown-quantity",
                format!("this job computes no `{}`", set.name.value),
            )
            .at(set.name.place);
            let names = computed.iter().map(Quantity::name);
            problems.push(match suggest::closest(&set.name.value, names) {
                Some(near) => problem.help(format!("did you mean `{near}`?")),
                None => problem.help("`flatwork takeoff` lists every quantity by its name"),
            });
            continue;
        };
        // Some only restate others, and are computed after every override has been looked up.
        let same = |known: &&Quantity| known.name() == set.name.value;
        if !computed.iter().filter(same).any(is_set) {
            let message = format!(
                "`{}` only follows from other quantities and cannot be set by itself",
                set.name.value
            );
            problems.push(
                Problem::new("cannot-set", message)
                    .at(set.name.place)
                    .help("set one of the quantities it is made of; `flatwork explain` shows them"),
            );
            continue;
        }
        let (unit, written) = (quantity.amount().unit, set.to.value.unit);
        if written != crate::values::Unit::Plain && written != unit {
            let message = format!(
                "`{}` is in {}, not in {}",
                set.name.value,
                unit.plural(),
                written.plural()
            );
            problems.push(
                Problem::new("wrong-unit", message)
                    .at(set.to.place)
                    .help(format!("write the number alone, or in {}", unit.plural())),
            );
        }
    }
}

fn is_set(quantity: &Quantity) -> bool {
    matches!(quantity.working(), Working::Set { .. })
}

/// Every computed quantity below `quantity`, each name once; once more where it is set.
fn gather(
    quantity: &Quantity,
    seen: &mut std::collections::BTreeSet<(String, bool)>,
    computed: &mut Vec<Quantity>,
) {
    let key = (quantity.name().to_owned(), is_set(quantity));
    if matches!(quantity.working(), Working::Given(_)) || !seen.insert(key) {
        return;
    }
    computed.push(quantity.clone());
    for part in quantity.parts() {
        gather(&part, seen, computed);
    }
}
