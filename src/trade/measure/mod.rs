//! Slabs on grade before anyone buys anything: areas, edges, volumes, steel, joints.
//!
//! Lengths are whole nanometres, quantities decimal with their unit. Every rule
//! names its source; `tables/SOURCES.md` lists the clauses. No price and no
//! supplier is known here, and nothing here can fail.

mod bars;
mod concrete;
mod crossings;
mod dowels;
mod edges;
mod joints;
mod lap;
mod mesh;
mod removal;

pub use bars::{BarQuantities, Run};
pub use dowels::DowelQuantities;
pub use edges::EdgeQuantities;
pub use joints::JointQuantities;
pub use removal::{RemovalQuantities, SawCut};

use crate::input::book::Rules;
use crate::input::business::OrderPolicy;
use crate::input::job::{Slab, Takeoff};
use crate::trade::Quantity;
use crate::trade::sets::Sets;
use crate::trade::term::sum;
use crate::values::Unit;

/// Everything measured of one slab.
#[derive(Clone, Debug)]
pub struct SlabQuantities {
    pub area: Quantity,
    pub edges: EdgeQuantities,
    pub concrete: Quantity,
    pub base: Option<Quantity>,
    /// Each size by itself.
    pub bars: Vec<BarQuantities>,
    /// Where bars of both ways cross, and may be tied.
    pub crossings: Option<Quantity>,
    pub mesh: Option<Quantity>,
    /// Bars across its edges, each kind by itself.
    pub dowels: Vec<DowelQuantities>,
    pub joints: Option<JointQuantities>,
    /// Formed and finished as one piece of work.
    pub is_step: bool,
}

impl SlabQuantities {
    /// Feet of bars in place, all sizes together.
    pub fn bar_feet(&self) -> Option<Quantity> {
        match &self.bars[..] {
            [] => None,
            [one] => Some(one.placed.clone()),
            all => Some(Quantity::by(
                "sizes added up",
                "bars of the slab",
                Unit::Foot,
                sum(all.iter().map(|bars| &bars.placed)),
            )),
        }
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
}

/// Measures every slab, in the order of the takeoff.
pub fn slabs(takeoff: &Takeoff, policy: &OrderPolicy, rules: &Rules) -> Vec<SlabQuantities> {
    let sets = Sets(&takeoff.sets);
    takeoff
        .slabs
        .iter()
        .map(|slab| self::slab(slab, policy, rules, sets))
        .collect()
}

/// Measures every removal, in the order of the takeoff.
pub fn removals(takeoff: &Takeoff) -> Vec<RemovalQuantities> {
    let sets = Sets(&takeoff.sets);
    takeoff
        .removals
        .iter()
        .map(|one| removal::measure(one, sets))
        .collect()
}

fn slab(slab: &Slab, policy: &OrderPolicy, rules: &Rules, sets: Sets<'_>) -> SlabQuantities {
    let area = sets.settle(concrete::area(slab));
    let edges = edges::measure(slab, sets);
    SlabQuantities {
        dowels: dowels::measure(slab, &edges, rules, sets),
        edges,
        concrete: sets.settle(concrete::volume(slab, &area)),
        base: slab
            .base
            .as_ref()
            .map(|base| sets.settle(concrete::base(slab, base, &area))),
        bars: bars::measure(slab, policy, rules, sets),
        crossings: crossings::measure(slab, policy, sets),
        mesh: mesh::measure(slab, policy, rules, &area, sets).map(|mesh| sets.settle(mesh)),
        joints: joints::measure(slab, sets),
        is_step: slab.on.is_some() || slab.kind == "step",
        area,
    }
}
