//! What was worked out once serves every choice that has the same slabs.
//!
//! Most choices leave most of the job alone. A quantity of the same parts by the same
//! name is then the very same quantity, and not computed again.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::sticks::{CutPlan, cut_plan};
use super::{Parts, Section};
use crate::input::job::{Slab, Takeoff};
use crate::trade::measure::{Measured, Run, SlabQuantities};
use crate::trade::working::{Name, Quantity};
use crate::values::Length;

/// What the choices of one takeoff, ordered by the same rules, have in common.
#[derive(Debug, Default)]
pub struct OrderMemo {
    /// Keeps every slab it has seen, so that their addresses tell them apart.
    pub(in crate::trade) measured: Measured,
    /// By the slab first: its address is quicker to compare than a name.
    parts: BTreeMap<(*const Slab, &'static str), Option<Quantity>>,
    bought: Once<Quantity>,
    plans: Vec<(Vec<Run>, Length, Arc<Planned>)>,
}

/// By a name, what was made of which parts.
pub(in crate::trade) type Once<T> = BTreeMap<String, Vec<(Parts, T)>>;

/// A cut plan, and what is said of it.
#[derive(Debug)]
pub struct Planned {
    pub plan: CutPlan,
    pub how: String,
}

impl OrderMemo {
    /// One quantity of each slab that has it; `what` is its name here.
    pub fn each(
        &mut self,
        what: &'static str,
        takeoff: &Takeoff,
        slabs: &[SlabQuantities],
        make: impl Fn(&Slab, &SlabQuantities) -> Option<Quantity>,
    ) -> Parts {
        let slabs = takeoff.slabs.iter().zip(slabs).enumerate();
        slabs
            .filter_map(|(i, (slab, measured))| {
                let known = self.parts.entry((Arc::as_ptr(slab), what));
                let part = known.or_insert_with(|| make(slab, measured));
                part.clone().map(|part| (Section::Slab(i), part))
            })
            .collect()
    }

    /// What is bought of an item by this name for these parts.
    pub(super) fn bought(
        &mut self,
        item: &str,
        name: Name,
        parts: &[(Section, Quantity)],
        make: impl FnOnce(Name) -> Quantity,
    ) -> Quantity {
        let known = format!("{item}, {name}");
        once(&mut self.bought, &known, parts, || make(name))
    }

    pub fn plan(&mut self, runs: Vec<Run>, stock: Length) -> Arc<Planned> {
        let same = |(known, length, _): &&(Vec<Run>, Length, Arc<Planned>)| {
            *known == runs && *length == stock
        };
        if let Some((.., planned)) = self.plans.iter().find(same) {
            return Arc::clone(planned);
        }
        let plan = cut_plan(&runs, stock);
        let how = format!(
            "{} whole sticks of {stock}, and {} pieces cut from {} more; never fewer than {}{}",
            plan.full,
            plan.pieces,
            plan.cut,
            plan.least,
            plan.cut_list()
        );
        let planned = Arc::new(Planned { plan, how });
        self.plans.push((runs, stock, Arc::clone(&planned)));
        planned
    }
}

/// What was made of the very same parts by this name before, or else is made now.
pub(in crate::trade) fn once<T: Clone>(
    known: &mut Once<T>,
    name: &str,
    parts: &[(Section, Quantity)],
    make: impl FnOnce() -> T,
) -> T {
    let same = |(before, _): &&(Parts, T)| {
        let mut both = before.iter().zip(parts);
        before.len() == parts.len()
            && both.all(|(one, other)| one.0 == other.0 && one.1.is(&other.1))
    };
    if let Some((_, value)) = known.get(name).and_then(|found| found.iter().find(same)) {
        return value.clone();
    }
    let value = make();
    let before = known.entry(name.to_owned()).or_default();
    before.push((parts.to_vec(), value.clone()));
    value
}
