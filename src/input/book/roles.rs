//! What an item of the book stands for in every job.

use std::collections::BTreeMap;

use super::item::{ItemKey, item_named};
use crate::reading::{At, Fields, Problem, Problems, suggest, words};

words! {
    /// What an item may stand for in every job; `uses.rs` says by which units it may be sold.
    pub enum Role {
        Forms "forms";
        DeepForms "deep forms";
        Stakes "stakes";
        IsolationStrip "isolation strip";
        CuringCompound "curing compound";
        VaporRetarder "vapor retarder";
        CuringCover "curing cover";
        Chairs "chairs";
        TieWire "tie wire";
        ShortLoad "short load";
        Delivery "delivery";
        Standing "standing time";
        Pump "pump";
        SawCutting "saw cutting";
        BreakingMachine "breaking machine";
        Labor "labor";
        Trip "trip";
    }
}

/// Nothing for what the owner does not charge.
pub(super) type Roles = BTreeMap<Role, At<Option<ItemKey>>>;

pub(super) fn read(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Roles {
    let mut roles = Roles::new();
    let Ok(node) = fields.required(key, problems) else {
        return roles;
    };
    for entry in node.entries("`use`", problems) {
        let Some(role) = Role::ALL.into_iter().find(|role| role.name() == entry.key) else {
            let keys = Role::ALL.map(Role::name);
            let message = format!("`use` has no key `{}`", entry.key);
            let problem = Problem::new("unknown-key", message).at(entry.key_place);
            problems.push(problem.help(match suggest::closest(&entry.key, keys) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("its keys are {}", keys.join(", ")),
            }));
            continue;
        };
        if let Ok(item) = item_named(&entry.node, problems) {
            roles.insert(role, item.map(|item| (item != "none").then_some(item)));
        }
    }
    roles
}
