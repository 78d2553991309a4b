//! Breaking out, taking up, sawing and digging.

use super::tasks::TaskName;
use crate::input::book::{Role, Rules};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::order::Section;
use crate::trade::working::Quantity;

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

pub(super) fn tasks(
    removals: &[RemovalQuantities],
    rules: &Rules,
) -> Vec<(TaskName, Vec<(Section, Quantity)>)> {
    let mut tasks = Vec::new();
    if we_saw(rules) {
        let faces = removals.iter().filter_map(|one| one.saw_cut.as_ref());
        let parts = faces.map(|cut| (Section::Removal, cut.face.clone()));
        tasks.push((TaskName::Rated("saw cut".into()), parts.collect()));
    }
    for name in TASKS {
        let parts = removals
            .iter()
            .filter(|one| one.task == name)
            .map(|one| {
                let much = match one.material {
                    RemovalMaterial::Concrete
                    | RemovalMaterial::Asphalt
                    | RemovalMaterial::Pavers => &one.area,
                    RemovalMaterial::Soil => &one.solid,
                };
                (Section::Removal, much.clone())
            })
            .collect();
        tasks.push((TaskName::Rated(name.into()), parts));
    }
    tasks
}

/// The crew saws unless the book pays somebody for it and names no hours.
fn we_saw(rules: &Rules) -> bool {
    let paid = rules.roles.get(&Role::SawCutting);
    let paid = paid.is_some_and(|role| role.value.is_some());
    !paid || rules.rates.get("saw cut").is_some()
}
