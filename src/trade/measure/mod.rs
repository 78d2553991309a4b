//! Slabs on grade before anyone buys anything: areas, edges, volumes, steel, joints.
//!
//! Lengths are whole nanometres, quantities decimal with their unit. Every rule
//! names its source; `tables/SOURCES.md` lists the clauses. No price and no
//! supplier is known here, and nothing here can fail.

mod area;
mod bars;
mod base;
mod boxes;
mod concrete;
mod corners;
mod crossings;
mod dig;
mod dowels;
mod edges;
mod faces;
mod joints;
mod lap;
mod mesh;
mod removal;
mod retarder;
mod rows;
mod site;
mod steps;
mod strips;
mod thickened;

pub use area::OpeningQuantities;
pub(super) use bars::weigh;
pub use bars::{BarQuantities, Run};
pub use base::BaseQuantities;
pub use boxes::BoxQuantities;
pub use dowels::DowelQuantities;
pub use edges::EdgeQuantities;
pub use faces::{BorderQuantities, Face, faces};
pub use joints::{JointQuantities, size as panel_size, spacing_by_thickness};
pub use removal::RemovalQuantities;
pub use site::works;
pub use steps::StepQuantities;
pub use thickened::ThickenedQuantities;

use std::collections::BTreeMap;
use std::sync::Arc;

use joints::{Laid, Layouts};

use crate::geometry::joints::Layout;
use crate::input::book::Rules;
use crate::input::business::OrderPolicy;
use crate::input::job::{Slab, Takeoff};
use crate::trade::Quantity;
use crate::trade::sets::Sets;
use crate::trade::tally::{Listed, Tally};
use crate::trade::term::{of, sum};
use crate::values::Unit;

/// Everything measured of one slab.
#[derive(Clone, Debug)]
pub struct SlabQuantities {
    pub area: Quantity,
    /// Of a path along its middle, and of a slab that is long for its width.
    pub length: Option<Quantity>,
    /// What is left open, in the order of the outline's holes.
    pub openings: Vec<OpeningQuantities>,
    pub edges: EdgeQuantities,
    pub concrete: Quantity,
    pub base: Option<BaseQuantities>,
    /// Each size by itself.
    pub bars: Vec<BarQuantities>,
    /// Along its thickened edges.
    edge_bars: Option<BarQuantities>,
    /// Around the corners of those.
    pub bent_bars: Option<BarQuantities>,
    /// Across the corners that turn into it.
    pub corner_bars: Option<BarQuantities>,
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
    /// All of it, as it is shown.
    pub listed: Arc<[Listed]>,
}

/// What slabs are measured by: the owner's ways, and what the book knows of its goods.
#[derive(Clone, Copy)]
pub struct Measuring<'a> {
    pub policy: &'a OrderPolicy,
    pub rules: &'a Rules,
}

/// What was measured so far: a slab that several choices share is measured once.
#[derive(Debug, Default)]
pub struct Measured {
    layouts: Layouts,
    /// By the slab and by its joints, which go by what lies around it too.
    known: BTreeMap<(*const Slab, *const Layout), Known>,
}

#[derive(Debug)]
struct Known {
    /// What the key points at stays where it is.
    _kept: (Arc<Slab>, Option<Arc<Layout>>),
    found: SlabQuantities,
}

impl Measured {
    /// Measures every slab, in the order of the takeoff.
    pub fn slabs(&mut self, takeoff: &Takeoff, with: Measuring<'_>) -> Arc<[SlabQuantities]> {
        let sets = Sets::measured(&takeoff.head.sets);
        let laid = self.layouts.of_all(takeoff, with.rules);
        let slabs = takeoff.slabs.iter().zip(&laid).map(|(one, laid)| {
            let layout = laid.as_ref().map(|laid| &laid.layout);
            let layout_at = layout.map_or(std::ptr::null(), Arc::as_ptr);
            let known = self.known.entry((Arc::as_ptr(one), layout_at));
            let known = known.or_insert_with(|| Known {
                _kept: (Arc::clone(one), layout.cloned()),
                found: slab(one, laid.as_ref(), with, sets),
            });
            known.found.clone()
        });
        slabs.collect()
    }
}

impl SlabQuantities {
    /// Whether joints are cut in it; a single panel has none.
    pub fn is_jointed(&self) -> bool {
        let joints = self.joints.as_ref();
        joints.is_some_and(|joints| !joints.layout.lines.is_empty())
    }

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

    /// All bars to cut: those of the slab, across its corners, along its thickened edges and in its steps.
    pub fn steel(&self) -> impl Iterator<Item = &BarQuantities> {
        let steps = self.steps.as_ref().and_then(|steps| steps.bars.as_ref());
        let slab = self.bars.iter().chain(&self.corner_bars);
        slab.chain(&self.edge_bars)
            .chain(&self.bent_bars)
            .chain(steps)
    }

    /// Whether it has more bars than those across its corners.
    pub fn is_barred(&self) -> bool {
        self.steel().count() != self.corner_bars.iter().count()
    }

    /// Under the slab, and under its steps.
    pub fn bases(&self) -> impl Iterator<Item = &BaseQuantities> {
        let steps = self.steps.as_ref().and_then(|steps| steps.base.as_ref());
        self.base.iter().chain(steps)
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
pub fn removals(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    policy: &OrderPolicy,
) -> Vec<RemovalQuantities> {
    let ground = dig::Ground {
        takeoff,
        slabs,
        policy,
    };
    let sets = Sets::measured(&takeoff.head.sets);
    takeoff
        .head
        .removals
        .iter()
        .map(|one| removal::measure(one, ground, sets))
        .collect()
}

/// In the order it is shown, as far as one thing can be settled before another.
fn slab(slab: &Slab, laid: Option<&Laid>, with: Measuring<'_>, sets: Sets<'_>) -> SlabQuantities {
    let tally = &mut Tally::of(&slab.key, sets);
    let (area, openings) = area::measure(slab, with.policy, tally);
    // Deep forms are told apart only where the book has a rate for them.
    let deep_over = with.rules.rates.get("form deep");
    let deep_over = deep_over.map(|_| with.policy.deep_form_over.value);
    let edges = edges::measure(slab, deep_over, tally);
    let thickness = concrete::thickness(slab, &openings, tally);
    concrete::over_level_base(slab, &area, &thickness, tally);
    let boxes = boxes::measure(slab, &thickness, with, tally);
    let flat = concrete::flat(slab, &area, &thickness, &boxes, tally);
    let thickened = thickened::measure(slab, &area, &thickness, tally);
    let steps = steps::measure(slab, with, tally);
    let retarder = retarder::measure(slab, with.policy, &area, tally);
    let concrete = concrete::whole(&flat, thickened.as_ref(), steps.as_ref(), tally);
    let base = base::measure(slab, &area, thickened.as_ref(), with.policy, tally);
    let joints = laid.map_or(&[][..], |laid| &laid.layout.lines);
    let rows = rows::both_ways(slab, joints, with.policy);
    let bars = bars::measure(slab, &rows, with, tally);
    let edge = thickened.as_ref();
    let edge_bars = edge.and_then(|edge| thickened::bars(slab, edge, with, tally));
    let bent_bars = edge.and_then(|edge| thickened::bent(slab, edge, with, tally));
    let corner_bars = corners::bars(slab, with, &openings, tally);
    let step_bars = steps.as_ref().and_then(|steps| steps.bars.as_ref());
    let all = bars.iter().chain(&corner_bars).chain(&edge_bars);
    bars::list(all.chain(&bent_bars).chain(step_bars), tally);
    let mesh = mesh::measure(slab, with, &area, tally);
    let dowels = dowels::measure(slab, &edges, with.rules, tally);
    boxes::list(&boxes, tally);
    let crossings = crossings::measure(&rows, tally);
    let border = faces::border(slab, edges.open.as_ref(), &area, tally);
    let joints = laid.map(|laid| joints::measure(slab, laid, &edges.jointed, tally));
    mesh::cut(slab, joints.as_ref(), tally);
    SlabQuantities {
        crossings,
        border,
        joints,
        listed: tally.done(),
        length: area::length(slab),
        area,
        openings,
        edges,
        concrete,
        base,
        bars,
        edge_bars,
        bent_bars,
        corner_bars,
        mesh,
        dowels,
        boxes,
        thickened,
        steps,
        retarder,
    }
}
