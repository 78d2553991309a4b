//! How concrete reaches the slabs of a pour.

use super::takeoff::Takeoff;
use crate::reading::keys::keys;
use crate::reading::{At, words};
use crate::values::Length;

words! {
    /// How concrete gets from the truck to the slab.
    pub enum Method("unknown-word", "concrete is not placed by `{}`", choose) {
        Chute "chute";
        Wheelbarrow "wheelbarrow";
        Buggy "buggy";
        Pump "pump";
    }
}

keys! {
    pub struct Access in "`access`" {
        by: At<Method> = "by", usual "chute", "chute, wheelbarrow, buggy or pump", "wheelbarrow";
        distance: Option<At<Length>> = "distance", none, "from the truck to the slab", "85 ft";
        gate: Option<At<Length>> = "gate", none, "narrowest place on the way", "42 in";
    }
}

impl Takeoff {
    /// The way to the slabs of a pour: its own, else that of the job.
    pub fn access_of(&self, placement: usize) -> &Access {
        let own = self.placements.get(placement);
        own.and_then(|pour| pour.access.as_ref())
            .unwrap_or(&self.head.access)
    }

    /// Every way of the job, each once.
    pub fn ways_in(&self) -> Vec<&Access> {
        let mut ways: Vec<&Access> = Vec::new();
        for placement in 0..self.placements.len() {
            let way = self.access_of(placement);
            if !ways.iter().any(|known| known.same(way)) {
                ways.push(way);
            }
        }
        ways
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

    fn same(&self, other: &Self) -> bool {
        let length = |length: &Option<At<Length>>| length.as_ref().map(|at| at.value);
        self.by.value == other.by.value
            && length(&self.distance) == length(&other.distance)
            && length(&self.gate) == length(&other.gate)
    }

    pub fn is_by(&self, method: Method) -> bool {
        self.by.value == method
    }
}
