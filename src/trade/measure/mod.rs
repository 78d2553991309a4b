//! Slabs on grade before anyone buys anything: areas, edges, volumes, steel, joints.
//!
//! Lengths are whole nanometres, quantities decimal with their unit. Every rule
//! names its source; `tables/SOURCES.md` lists the clauses. No price and no
//! supplier is known here, and nothing here can fail.

mod area;
mod bars;
mod boxes;
mod concrete;
mod crossings;
mod dowels;
mod edges;
mod faces;
mod joints;
mod lap;
mod mesh;
mod removal;
mod steps;
mod thickened;

pub use area::OpeningQuantities;
pub use bars::{BarQuantities, Run};
pub use boxes::BoxQuantities;
pub use dowels::DowelQuantities;
pub use edges::EdgeQuantities;
pub use faces::{BorderQuantities, Face, faces};
pub use joints::JointQuantities;
pub use removal::{RemovalQuantities, SawCut};
pub use steps::StepQuantities;
pub use thickened::ThickenedQuantities;

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::input::book::Rules;
use crate::input::business::OrderPolicy;
use crate::input::job::{Slab, Takeoff};
use crate::trade::Quantity;
use crate::trade::sets::Sets;
use crate::trade::term::{of, sum};
use crate::values::Unit;

/// Everything measured of one slab.
#[derive(Clone, Debug)]
pub struct SlabQuantities {
    pub area: Quantity,
    /// What is left open, in the order of the outline's holes.
    pub openings: Vec<OpeningQuantities>,
    pub edges: EdgeQuantities,
    pub concrete: Quantity,
    /// Where one end is thicker than the other.
    pub mean_thickness: Option<Quantity>,
    /// Of the slab alone, where there is more to it.
    pub flat: Option<Quantity>,
    pub base: Option<Quantity>,
    /// Each size by itself.
    pub bars: Vec<BarQuantities>,
    /// Where bars of both ways cross, and may be tied.
    pub crossings: Option<Quantity>,
    pub mesh: Option<Quantity>,
    /// Bars across its edges, each kind by itself.
    pub dowels: Vec<DowelQuantities>,
    pub joints: Option<JointQuantities>,
    pub boxes: Vec<BoxQuantities>,
    pub thickened: Option<ThickenedQuantities>,
    pub steps: Option<StepQuantities>,
    /// Square feet of sheet, laps included.
    pub retarder: Option<Quantity>,
    pub border: Option<BorderQuantities>,
    /// Formed and finished as one piece of work.
    pub is_step: bool,
}

/// What was measured so far: a slab that several choices share is measured once.
#[derive(Debug, Default)]
pub struct Measured(BTreeMap<*const Slab, (Arc<Slab>, SlabQuantities)>);

impl Measured {
    /// Measures every slab, in the order of the takeoff.
    pub fn slabs(
        &mut self,
        takeoff: &Takeoff,
        policy: &OrderPolicy,
        rules: &Rules,
    ) -> Arc<[SlabQuantities]> {
        let sets = Sets(&takeoff.head.sets);
        let slabs = takeoff.slabs.iter().map(|one| {
            let known = self.0.entry(Arc::as_ptr(one));
            let (_, found) =
                known.or_insert_with(|| (Arc::clone(one), slab(one, policy, rules, sets)));
            found.clone()
        });
        slabs.collect()
    }
}

impl SlabQuantities {
    /// Holes drilled for dowels and ties.
    pub fn holes(&self) -> Option<Quantity> {
        match &self.dowels[..] {
            [] => None,
            [one] => Some(one.holes.clone()),
            all => Some(Quantity::by(
                "dowels and ties",
                "holes of the slab",
                Unit::Piece,
                sum(all.iter().map(|dowels| &dowels.holes)),
            )),
        }
    }

    /// All bars to cut: those of the slab, and those along its thickened edges.
    pub fn steel(&self) -> impl Iterator<Item = &BarQuantities> {
        let edge = self.thickened.as_ref().and_then(|edge| edge.bars.as_ref());
        self.bars.iter().chain(edge)
    }

    /// What there is of it beyond an even slab, in the order it is shown.
    pub fn sections(&self) -> Vec<Quantity> {
        let first = self.mean_thickness.iter().chain(&self.flat);
        let mut all: Vec<Quantity> = first.cloned().collect();
        if let Some(edge) = &self.thickened {
            all.extend([edge.length.clone(), edge.strip.clone()]);
            all.extend(edge.taper.clone());
            all.push(edge.concrete.clone());
            all.extend(edge.core.clone());
        }
        if let Some(steps) = &self.steps {
            all.push(steps.risers.clone());
            all.extend(steps.concrete.clone());
            all.push(steps.riser_form.clone());
            all.extend(steps.side_form.clone());
            all.push(steps.face.clone());
        }
        all.extend(self.retarder.clone());
        all
    }

    /// Compacted, inside the walls of a stoop.
    pub fn fill(&self) -> Option<&Quantity> {
        self.thickened.as_ref().and_then(|edge| edge.core.as_ref())
    }

    /// What is cured: the slab, and the faces of its steps.
    pub fn surface(&self) -> Quantity {
        match &self.steps {
            None => self.area.clone(),
            Some(steps) => Quantity::by(
                "slab and steps",
                "surface",
                Unit::SquareFoot,
                of(&self.area) + &steps.face,
            ),
        }
    }
}

/// Measures every removal, in the order of the takeoff.
pub fn removals(takeoff: &Takeoff) -> Vec<RemovalQuantities> {
    let sets = Sets(&takeoff.head.sets);
    takeoff
        .head
        .removals
        .iter()
        .map(|one| removal::measure(one, sets))
        .collect()
}

fn slab(slab: &Slab, policy: &OrderPolicy, rules: &Rules, sets: Sets<'_>) -> SlabQuantities {
    let openings = area::openings(slab, policy, sets);
    let area = sets.settle(area::of_slab(slab, &openings, sets));
    let thickness = concrete::thickness(slab, sets);
    let thickened = thickened::measure(slab, &area, &thickness, (policy, rules), sets);
    let steps = steps::measure(slab, sets);
    // Deep forms are told apart only where the book has a rate for them.
    let deep_over = (rules.rates.get("form deep")).map(|_| policy.deep_form_over.value);
    let boxes = boxes::measure(slab, &thickness, (policy, rules), sets);
    let flat = concrete::volume(slab, &area, &thickness);
    let flat = sets.settle(boxes::less(slab, flat, &boxes));
    let whole = concrete::whole(slab, &flat, thickened.as_ref(), steps.as_ref());
    let edges = edges::measure(slab, deep_over, sets);
    let laid = bars::both_ways(slab, policy);
    SlabQuantities {
        dowels: dowels::measure(slab, &edges, rules, sets),
        border: faces::border(slab, edges.open(), &area, sets),
        edges,
        flat: whole.is_some().then(|| flat.clone()),
        concrete: whole.map_or(flat, |whole| sets.settle(whole)),
        base: slab
            .base
            .as_ref()
            .map(|base| sets.settle(concrete::base(slab, base, &area))),
        bars: bars::measure(slab, &laid, rules, sets),
        crossings: crossings::measure(slab, &laid, sets),
        mesh: mesh::measure(slab, policy, rules, &area, sets).map(|mesh| sets.settle(mesh)),
        joints: joints::measure(slab, sets),
        boxes,
        is_step: (slab.on.is_some() || slab.kind == "step") && steps.is_none(),
        retarder: concrete::retarder(slab, policy, &area).map(|sheet| sets.settle(sheet)),
        mean_thickness: slab.sections.thick_end.as_ref().map(|_| thickness),
        thickened,
        steps,
        openings,
        area,
    }
}
