//! Breaking out, taking up, sawing and digging.

use super::stages::Stage;
use super::task::Task;
use crate::input::book::{Role, Rules};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::order::{Parts, Section};

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
    let mut add = |name, parts: Parts| tasks.push(Task::rated(name, Stage::Remove, parts));
    if we_saw(rules) {
        let faces = removals.iter().filter_map(|one| one.saw_cut.as_ref());
        let parts = faces.map(|cut| (Section::Removal, cut.face.clone()));
        add("saw cut", parts.collect());
    }
    for name in TASKS {
        let of_it = removals.iter().filter(|one| one.task == name);
        let parts = of_it.map(|one| {
            let much = match one.material {
                RemovalMaterial::Concrete | RemovalMaterial::Asphalt | RemovalMaterial::Pavers => {
                    &one.area
                }
                RemovalMaterial::Soil => &one.solid,
            };
            (Section::Removal, much.clone())
        });
        add(name, parts.collect());
    }
    tasks
}

/// The crew saws unless the book pays somebody for it and names no hours.
fn we_saw(rules: &Rules) -> bool {
    let paid = rules.roles.get(&Role::SawCutting);
    let paid = paid.is_some_and(|role| role.value.is_some());
    !paid || rules.rates.get("saw cut").is_some()
}
