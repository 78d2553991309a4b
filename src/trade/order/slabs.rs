//! What follows from the slabs alone: worked out once for all choices that have the same.
//!
//! It may look at nothing of the takeoff that a choice changes beside the slabs: not at
//! what is removed, nor at what is added.

use std::sync::Arc;

use super::{ConcreteOrder, List, Missing, Need, Ways, Worked, boxes, concrete, finishes, goods};
use crate::input::job::Takeoff;
use crate::trade::crew::{self, SlabTasks};
use crate::trade::measure::SlabQuantities;
use crate::trade::sets::Sets;

/// The slabs as measured, what is bought for them, and the work on them.
#[derive(Debug)]
pub(super) struct OfSlabs {
    pub slabs: Arc<[SlabQuantities]>,
    pub orders: Vec<ConcreteOrder>,
    pub needs: Vec<Need>,
    pub missing: Vec<Missing>,
    pub tasks: SlabTasks,
}

pub(super) fn of_slabs(takeoff: &Takeoff, ways: Ways<'_>, worked: &mut Worked) -> Arc<OfSlabs> {
    let slabs: Vec<_> = takeoff.slabs.iter().map(Arc::as_ptr).collect();
    if let Some(known) = worked.of_slabs.get(&slabs) {
        return Arc::clone(known);
    }
    let found = Arc::new(work_out(takeoff, ways, worked));
    worked.of_slabs.insert(slabs, Arc::clone(&found));
    found
}

fn work_out(takeoff: &Takeoff, ways: Ways<'_>, worked: &mut Worked) -> OfSlabs {
    let slabs = worked.measured.slabs(takeoff, ways.order, ways.rules);
    let mut list = List {
        ways,
        sets: Sets(&takeoff.head.sets),
        needs: Vec::new(),
        missing: Vec::new(),
        worked,
    };
    let orders = concrete::orders(takeoff, &slabs, &mut list);
    goods::list(takeoff, &slabs, &orders, &mut list);
    boxes::list(takeoff, &mut list);
    finishes::list(takeoff, &slabs, &orders, &mut list);
    let work = crew::Work {
        takeoff,
        slabs: &slabs,
        orders: &orders,
    };
    let tasks = crew::of_slabs(&work, &mut list);
    OfSlabs {
        tasks,
        needs: list.needs,
        missing: list.missing,
        slabs,
        orders,
    }
}
