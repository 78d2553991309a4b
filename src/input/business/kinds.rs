//! What is usual for each kind of slab: a takeoff of three lines is priced with these.

use std::collections::BTreeMap;

use super::tables;
use crate::input::job::SlabValues;
use crate::reading::{Node, Problems};

/// The usual values of one kind; the same keys as a slab of a takeoff.
#[derive(Clone, Debug)]
pub struct Kind {
    pub values: SlabValues,
}

pub(super) fn read(node: &Node, problems: &mut Problems) -> BTreeMap<String, Kind> {
    let mut kinds = BTreeMap::new();
    for entry in node.entries("`kinds`", problems) {
        if let Some(fields) = entry.node.fields(&tables::KIND, problems).ok() {
            kinds.insert(
                entry.key.clone(),
                Kind {
                    values: SlabValues::read(&fields, problems),
                },
            );
        }
    }
    kinds
}
