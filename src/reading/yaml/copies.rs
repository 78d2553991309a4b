//! Values marked `&name` and used again as `*name`, within a budget.

use super::DEEPEST;
use crate::reading::place::Place;
use crate::reading::problem::{Problem, Problems};
use crate::reading::tree::{Node, Value};
use std::collections::BTreeMap;

/// What stops reading, since going on could not end well; already reported.
pub(super) struct Halt;

/// Nodes that copies may add to one file. Ten lines of aliases to aliases could otherwise
/// stand for a billion nodes.
const MOST_COPIED: usize = 20_000;

#[derive(Default)]
pub(super) struct Copies {
    kept: BTreeMap<usize, Kept>,
    copied: usize,
}

struct Kept {
    node: Node,
    nodes: usize,
    depth: usize,
}

impl Copies {
    /// Remembers a value marked `&name`, which is a copy too.
    pub(super) fn keep(
        &mut self,
        anchor: usize,
        node: &Node,
        problems: &mut Problems,
    ) -> Result<(), Halt> {
        let (nodes, depth) = size(node);
        self.spend(nodes, node.place, problems)?;
        let node = node.clone();
        self.kept.insert(anchor, Kept { node, nodes, depth });
        Ok(())
    }

    /// The value `*name` stands for; `None` if that value is not even finished.
    pub(super) fn copy(
        &mut self,
        anchor: usize,
        depth: usize,
        place: Place,
        problems: &mut Problems,
    ) -> Result<Option<Node>, Halt> {
        let Some(kept) = self.kept.get(&anchor) else {
            let problem = Problem::new("alias-in-itself", "a value cannot be a part of itself");
            problems.push(problem.at(place).help("write the value out"));
            return Ok(None);
        };
        if DEEPEST < depth + kept.depth {
            problems.push(super::too_deep(place));
            return Ok(None);
        }
        let (nodes, node) = (kept.nodes, kept.node.clone());
        self.spend(nodes, place, problems)?;
        Ok(Some(node))
    }

    fn spend(&mut self, nodes: usize, place: Place, problems: &mut Problems) -> Result<(), Halt> {
        self.copied += nodes;
        if self.copied <= MOST_COPIED {
            return Ok(());
        }
        let message = format!("aliases such as this one copy more than {MOST_COPIED} values");
        let problem = Problem::new("too-many-copies", message);
        problems.push(problem.at(place).help("write the values out"));
        Err(Halt)
    }
}

/// Nodes in a tree, and how deep it is. Trees are never deeper than [`DEEPEST`].
fn size(node: &Node) -> (usize, usize) {
    let add = |(nodes, depth): (usize, usize), node: &Node| {
        let (more, below) = size(node);
        (nodes + more, depth.max(below + 1))
    };
    match &node.value {
        Value::Nothing | Value::Text(_) => (1, 0),
        Value::List(items) => items.iter().fold((1, 1), add),
        Value::Map(entries) => entries.iter().map(|entry| &entry.node).fold((1, 1), add),
    }
}
