//! Breaking out, taking up, sawing and digging.

use super::step::Step;
use super::task::Task;
use crate::input::book::{Role, Rules};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::order::{Parts, Section};
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Rates of removal, in the order of the work.
const TASKS: [&str; 9] = [
    "break out concrete",
    "break out reinforced concrete",
    "break out with machine",
    "break out reinforced with machine",
    "break out asphalt",
    "break out asphalt with machine",
    "take up pavers",
    "dig",
    "dig with machine",
];

pub(super) fn tasks(removals: &[RemovalQuantities], rules: &Rules) -> Vec<Task> {
    let mut tasks = Vec::new();
    if we_saw(rules) {
        let faces = removals.iter().filter_map(|one| one.saw_cut.as_ref());
        let parts = faces.map(|cut| (Section::Removal, cut.face.clone()));
        tasks.push(Task::rated("saw cut", Step::Remove, parts.collect()));
    }
    for name in TASKS {
        let of_it = || removals.iter().filter(|one| one.task == name);
        let by = |what: fn(&RemovalQuantities) -> &Quantity| -> Parts {
            let parts = of_it().map(|one| (Section::Removal, what(one).clone()));
            parts.collect()
        };
        let (area, volume) = (by(|one| &one.area), by(|one| &one.solid));
        // Soil is rated by what is dug, all else by its face, unless the book says otherwise.
        let is_dug = of_it().any(|one| one.material == RemovalMaterial::Soil);
        let task = if is_dug {
            Task::rated(name, Step::Remove, volume).or(Unit::SquareFoot, area)
        } else {
            Task::rated(name, Step::Remove, area).or(Unit::CubicYard, volume)
        };
        let weights = of_it().filter_map(|one| {
            let dump = rules.disposal.get(one.material.name())?;
            let weight = Quantity::each("weight of a yard in place", Unit::Pound, &dump.weight);
            let tons = of(&one.solid) * &weight / number(2000);
            let weight = Quantity::by("in place × weight ÷ 2,000", "weight", Unit::Ton, tons);
            Some((Section::Removal, weight))
        });
        tasks.push(task.or(Unit::Ton, weights.collect()));
    }
    tasks
}

/// The crew saws unless the book pays somebody for it and names no hours.
fn we_saw(rules: &Rules) -> bool {
    let paid = rules.roles.get(&Role::SawCutting);
    let paid = paid.is_some_and(|role| role.value.is_some());
    !paid || rules.rates.get("saw cut").is_some()
}
