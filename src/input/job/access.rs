//! How concrete reaches the slabs of a pour.

pub use crate::input::phrases::Method;
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Group as _, Node, Problems, Read};
use crate::values::Length;

keys! {
    pub struct Access in "`access`" {
        by: At<Method> = "by", usual "chute", "chute, wheelbarrow, buggy or pump", "wheelbarrow";
        distance: Option<At<Length>> = "distance", none, "from the truck to the slab", "85 ft";
        gate: Option<At<Length>> = "gate", none, "narrowest place on the way", "42 in";
    }
}

impl Access {
    /// Of the way itself nothing is known.
    pub(super) const fn only(by: At<Method>) -> Self {
        Access {
            by,
            distance: None,
            gate: None,
        }
    }

    pub fn same(&self, other: &Self) -> bool {
        let length = |length: &Option<At<Length>>| length.as_ref().map(|at| at.value);
        self.by.value == other.by.value
            && length(&self.distance) == length(&other.distance)
            && length(&self.gate) == length(&other.gate)
    }

    pub fn is_by(&self, method: Method) -> bool {
        self.by.value == method
    }
}

/// The job's way; by the chute where nothing is said.
pub fn access(job: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Access> {
    match job.node(key) {
        Some(node) => way(node, problems),
        None => Ok(Access::only(At::new(Method::Chute, job.heading()))),
    }
}

/// The way of a pour, where it has one of its own that can be read.
pub fn own_access(pour: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<Access> {
    let node = pour.node(key);
    node.and_then(|node| way(node, problems).ok())
}

fn way(node: &Node, problems: &mut Problems) -> Read<Access> {
    if node.is_map() {
        return Access::read(&node.fields(Access::TABLE, problems)?, problems);
    }
    node.read_at(problems).map(Access::only)
}
