//! Everything a job needs before prices: what is measured, ordered and worked, once for all its choices.
//!
//! Choices with all the same slabs share everything that follows from the slabs alone. That may
//! look at nothing of the takeoff that a choice changes beside them: not at what is removed, nor
//! at what is added.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::also::{after_crew, names};
use super::crew::{self, Crew, SlabTasks};
use super::measure::{self, Measuring, RemovalQuantities, SlabQuantities};
use super::order::also;
use super::order::{self, ConcreteOrder, List, Missing, Need, Ordering, Parts, Policies};
use super::sets::Sets;
use super::tally::{Listed, Scope};
use super::working::Quantity;
use crate::input::book::Known;
use crate::input::business::CrewPolicy;
use crate::input::job::{Extra, Slab, Takeoff};
use crate::values::Amount;

/// Everything a job needs, before prices.
#[derive(Clone, Debug)]
pub struct JobNeeds {
    /// Shared by every choice that has the same slabs.
    pub slabs: Arc<[SlabQuantities]>,
    pub removals: Vec<RemovalQuantities>,
    pub orders: Vec<ConcreteOrder>,
    pub crew: Crew,
    pub needs: Vec<Need>,
    pub missing: Vec<Missing>,
    /// What the built-in purposes go by, whoever buys it.
    purposes: Vec<(&'static str, Parts)>,
    /// What the customer reads of the owner's own rules.
    pub says: Vec<String>,
    /// The pour for whose day it is bought what serves the whole job.
    pub first_pour: usize,
}

/// What was worked out once serves every choice of the same takeoff, by the same rules.
#[derive(Debug, Default)]
pub struct Memo {
    order: order::OrderMemo,
    crew: crew::KnownHours,
    of_slabs: BTreeMap<(Vec<*const Slab>, Ordering), Arc<OfSlabs>>,
}

/// The slabs as measured, what is bought for them, and the work on them.
#[derive(Debug)]
struct OfSlabs {
    slabs: Arc<[SlabQuantities]>,
    orders: Vec<ConcreteOrder>,
    needs: Vec<Need>,
    missing: Vec<Missing>,
    purposes: Vec<(&'static str, Parts)>,
    tasks: SlabTasks,
}

/// Everything the job needs as it stands; what is worked out for other choices of it serves again.
pub fn needs(takeoff: &Takeoff, by: Policies<'_>, memo: &mut Memo) -> JobNeeds {
    let own = takeoff.head.people.as_ref();
    let own = own.map(|people| CrewPolicy {
        people: people.clone(),
        ..by.crew.clone()
    });
    let crew = own.as_ref().unwrap_or(by.crew);
    let by = Policies { crew, ..by };
    let of_slabs = of_slabs(takeoff, by, memo);
    let (slabs, orders) = (&of_slabs.slabs, &of_slabs.orders);
    let removals = measure::removals(takeoff, slabs, by.order);
    let extras: Vec<&Extra> = takeoff.head.extras.iter().chain(&takeoff.added).collect();
    let mut list = List::new(
        by,
        Sets::of_crew(&takeoff.head.sets, by.crew),
        &mut memo.order,
    );
    list.needs.clone_from(&of_slabs.needs);
    list.missing.clone_from(&of_slabs.missing);
    list.purposes.clone_from(&of_slabs.purposes);
    let job = also::Job {
        takeoff,
        slabs,
        removals: &removals,
        orders,
    };
    list.replaced = also::replaced(job, by.rules);
    order::beside_slabs(takeoff, slabs, &removals, &extras, &mut list);
    let says = also::list(job, &mut list);
    let also = also::done(job, &list);
    let work = crew::Work {
        takeoff,
        slabs,
        orders,
    };
    let tasks = &of_slabs.tasks;
    let beside = crew::Beside {
        removals: &removals,
        extras: &extras,
        also,
    };
    let crew = crew::crew(&work, tasks, beside, &mut list, &mut memo.crew);
    after_crew(job, &crew, &mut list);
    let mut missing = list.missing;
    missing.sort();
    missing.dedup();
    JobNeeds {
        slabs: Arc::clone(slabs),
        removals,
        orders: orders.clone(),
        crew,
        needs: list.needs,
        missing,
        purposes: list.purposes,
        says,
        first_pour: takeoff.first_pour(),
    }
}

fn of_slabs(takeoff: &Takeoff, by: Policies<'_>, memo: &mut Memo) -> Arc<OfSlabs> {
    let slabs = takeoff.slabs.iter().map(Arc::as_ptr).collect();
    let key = (slabs, by.ordering.clone());
    if let Some(known) = memo.of_slabs.get(&key) {
        return Arc::clone(known);
    }
    let found = Arc::new(work_out(takeoff, by, memo));
    memo.of_slabs.insert(key, Arc::clone(&found));
    found
}

fn work_out(takeoff: &Takeoff, by: Policies<'_>, memo: &mut Memo) -> OfSlabs {
    let (policy, rules) = (by.order, by.rules);
    let with = Measuring { policy, rules };
    let slabs = memo.order.measured.slabs(takeoff, with);
    let mut list = List::new(
        by,
        Sets::of_crew(&takeoff.head.sets, by.crew),
        &mut memo.order,
    );
    let alone = also::Job {
        takeoff,
        slabs: &slabs,
        removals: &[],
        orders: &[],
    };
    list.replaced = also::replaced(alone, rules);
    let place = |orders: &mut [ConcreteOrder], list: &mut List<'_>| {
        crew::placing(takeoff, &slabs, orders, list)
    };
    let (orders, placing) = order::for_slabs(takeoff, &slabs, &mut list, place);
    let work = crew::Work {
        takeoff,
        slabs: &slabs,
        orders: &orders,
    };
    let tasks = crew::of_slabs(&work, placing, &mut list, &mut memo.crew);
    OfSlabs {
        tasks,
        needs: list.needs,
        missing: list.missing,
        purposes: list.purposes,
        slabs,
        orders,
    }
}

impl JobNeeds {
    /// Every quantity on the list, by the part of the job it belongs to, in the order they are shown.
    pub fn quantities(&self) -> impl Iterator<Item = (Scope, &Listed)> {
        let slabs = self.slabs.iter().enumerate();
        let slabs = slabs.map(|(i, slab)| (Scope::Slab(i), &slab.listed));
        let removals = self.removals.iter();
        let orders = self.orders.iter().enumerate();
        let pours = self.crew.pours.iter();
        slabs
            .chain(removals.map(|removal| (Scope::Removal, &removal.listed)))
            .chain(orders.map(|(i, order)| (Scope::Order(i), &order.listed)))
            .chain(pours.map(|day| (Scope::Pour(day.pour), &day.listed)))
            .chain([
                (Scope::Work, &self.crew.work_listed),
                (Scope::Crew, &self.crew.time_listed),
            ])
            .flat_map(|(scope, listed)| listed.iter().map(move |one| (scope, one)))
    }

    /// Every quantity that a rule of the owner's can go by, with all that this job has of it.
    pub fn names(&self, takeoff: &Takeoff) -> Vec<(Known, Amount)> {
        let job = also::Job {
            takeoff,
            slabs: &self.slabs,
            removals: &self.removals,
            orders: &self.orders,
        };
        names(job, &self.crew, &self.purposes)
    }

    /// What is paid for, and every quantity on the list that may be asked for by itself.
    pub fn roots(&self) -> Vec<Quantity> {
        let needs = self.needs.iter().map(|need| &need.quantity);
        let listed = self.quantities().filter(|(_, listed)| listed.is_root);
        let roots = needs.chain(listed.map(|(_, listed)| &listed.quantity));
        roots.cloned().collect()
    }
}
