//! How concrete reaches the slabs of a pour.

use super::takeoff::{Access, Method, Takeoff};
use crate::reading::At;
use crate::values::Length;

impl Takeoff {
    /// The way to the slabs of a pour: its own, else that of the job.
    pub fn access_of(&self, placement: usize) -> &Access {
        let own = self.placements.get(placement);
        own.and_then(|pour| pour.access.as_ref())
            .unwrap_or(&self.access)
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
