//! The owner's last word: a computed quantity overruled by name.

use std::collections::BTreeSet;

use rust_decimal::Decimal;

use crate::input::book::Role;
use crate::input::business::CrewPolicy;
use crate::input::job::SetTo;
use crate::reading::{Problem, Problems, suggest};
use crate::trade::{Quantity, Working};
use crate::values::{Amount, Unit};

/// The overrides of a takeoff.
#[derive(Clone, Copy, Debug)]
pub struct Sets<'a> {
    all: &'a [SetTo],
    /// In the crew; one where nothing is in hours yet.
    people: Decimal,
}

impl<'a> Sets<'a> {
    /// Of what is measured, which takes no time.
    pub const fn measured(all: &'a [SetTo]) -> Self {
        let people = Decimal::ONE;
        Self { all, people }
    }

    pub const fn of_crew(all: &'a [SetTo], crew: &CrewPolicy) -> Self {
        let people = crew.people.value.value;
        Self { all, people }
    }

    /// The quantity, or what the owner set it to; what depends on it follows.
    pub fn settle(self, quantity: Quantity) -> Quantity {
        let unit = quantity.amount().unit;
        self.settle_in(unit, quantity)
    }

    /// The same, where a number without a unit is in this one.
    pub fn settle_in(self, usual: Unit, quantity: Quantity) -> Quantity {
        let Some(set) = self
            .all
            .iter()
            .find(|set| set.name.value == quantity.name())
        else {
            return quantity;
        };
        let mut to = set.to.value;
        if to.unit == Unit::Plain {
            to.unit = usual;
        }
        let sixty = Decimal::from(60);
        let (value, said) = match (to.unit, quantity.amount().unit) {
            (Unit::CrewHour, Unit::Hour) => {
                let people = Amount::new(self.people, Unit::Plain);
                (
                    to.value * self.people,
                    Some(format!("{to} of {people} people")),
                )
            }
            (Unit::Hour, Unit::Hour) if quantity.name() == Role::Labor.purpose().called => {
                (to.value, Some("person hours".to_owned()))
            }
            (Unit::Minute, Unit::Hour) => (to.value / sixty, Some(to.to_string())),
            (Unit::Hour, Unit::Minute) => (to.value * sixty, Some(to.to_string())),
            _ => (to.value, None),
        };
        quantity.set(value, said, set.because.clone(), set.to.place)
    }
}

/// Reports every override that no quantity of any choice answers to.
///
/// `choices` are the roots of each, as quoted first; a quantity that only an option computes
/// may be overruled like any other.
pub fn check(
    sets: &[SetTo],
    choices: impl Iterator<Item = Vec<Quantity>>,
    problems: &mut Problems,
) {
    let mut open: Vec<&SetTo> = sets.iter().collect();
    let mut known: BTreeSet<String> = BTreeSet::new();
    for roots in choices {
        if open.is_empty() {
            return;
        }
        let computed = below(&roots);
        open.retain(|set| {
            let overruled = computed
                .iter()
                .find(|one| one.name() == set.name.value && is_set(one));
            if let Some(quantity) = overruled {
                in_its_unit(set, quantity, problems);
            }
            overruled.is_none()
        });
        if !open.is_empty() {
            known.extend(computed.iter().map(|one| one.name().to_owned()));
        }
    }
    for set in open {
        problems.push(unanswered(set, &known));
    }
}

/// Every quantity below these, each name once; once more where it is set.
fn below(roots: &[Quantity]) -> Vec<&Quantity> {
    let (mut seen, mut computed) = (BTreeSet::new(), Vec::new());
    for root in roots {
        gather(root, &mut seen, &mut computed);
    }
    computed
}

fn unanswered(set: &SetTo, known: &BTreeSet<String>) -> Problem {
    let name = &set.name.value;
    // Some only restate others, and are computed after every override has been looked up.
    if known.contains(name) {
        let message =
            format!("`{name}` only follows from other quantities and cannot be set by itself");
        return Problem::new("cannot-set", message)
            .at(set.name.place)
            .help("set one of the quantities it is made of; `flatwork explain` shows them");
    }
    let message = format!("this job computes no `{name}`");
    let problem = Problem::new("unknown-quantity", message).at(set.name.place);
    match suggest::closest(name, known.iter().map(String::as_str)) {
        Some(near) => problem.help(format!("did you mean `{near}`?")),
        None => problem.help("`flatwork takeoff` lists every quantity by its name"),
    }
}

fn in_its_unit(set: &SetTo, quantity: &Quantity, problems: &mut Problems) {
    let (unit, written) = (quantity.amount().unit, set.to.value.unit);
    let is_meant = match written {
        Unit::Plain => true,
        Unit::CrewHour => unit == Unit::Hour,
        Unit::Hour | Unit::Minute => matches!(unit, Unit::Hour | Unit::Minute),
        written => written == unit,
    };
    if is_meant {
        return;
    }
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

fn is_set(quantity: &Quantity) -> bool {
    matches!(quantity.working(), Working::Set { .. })
}

/// Every computed quantity below `quantity`, each name once; once more where it is set.
fn gather<'a>(
    quantity: &'a Quantity,
    seen: &mut BTreeSet<(&'a str, bool)>,
    computed: &mut Vec<&'a Quantity>,
) {
    let key = (quantity.name(), is_set(quantity));
    if matches!(quantity.working(), Working::Given(_)) || !seen.insert(key) {
        return;
    }
    computed.push(quantity);
    for part in quantity.made_of() {
        gather(part, seen, computed);
    }
}
