//! What a slab is beyond one even thickness: a thick end, thickened edges, a sheet below, steps.

use crate::geometry::{Compass, Point};
use crate::input::phrases::StoopPhrase;
use crate::input::sections::{EdgeBars, StepsBottom, Thickened};
use crate::reading::At;
use crate::values::Length;

/// Compacted, of what and how deep.
#[derive(Clone, Debug)]
pub struct Base {
    pub depth: At<Length>,
    pub material: At<String>,
}

/// Everything a slab may have beyond one even thickness.
#[derive(Clone, Debug, Default)]
pub struct Sections {
    pub thickened: Option<Thickened>,
    /// Where a vapor retarder was asked for.
    pub retarder: Option<At<()>>,
    pub steps: Option<Steps>,
    pub stoop: Option<At<StoopPhrase>>,
}

/// A flight that leads down from an edge, made of one piece with it.
#[derive(Clone, Debug)]
pub struct Steps {
    /// The step up onto the slab counts.
    pub risers: At<u32>,
    pub rise: At<Length>,
    /// None where the only riser is the slab's own edge.
    pub tread: Option<At<Length>>,
    pub width: At<Length>,
    pub edge: Compass,
    /// Where it meets the edge, on the site; the way down is to the right of the way from one to the other.
    pub top: (Point, Point),
    /// Under the steps below the slab.
    pub base: Option<Base>,
    /// Along each of them.
    pub bars: Option<At<EdgeBars>>,
    /// How far down they go, where anybody says it.
    pub bottom: Option<At<StepsBottom>>,
    /// From bottom to top, as measured.
    pub total: Option<At<Length>>,
}

impl Sections {
    /// Whether walls hold fill below the slab.
    pub fn is_filled(&self) -> bool {
        let stoop = self.stoop.as_ref().map(|stoop| &stoop.value);
        matches!(stoop, Some(StoopPhrase::Filled { .. }))
    }

    /// Whether the slab is one block down to the foot of its steps.
    pub fn is_solid(&self) -> bool {
        let stoop = self.stoop.as_ref().map(|stoop| &stoop.value);
        matches!(stoop, Some(StoopPhrase::Solid))
    }

    /// The bought material inside the walls of a stoop.
    pub fn fill(&self) -> Option<&String> {
        match &self.stoop.as_ref()?.value {
            StoopPhrase::Filled { with, .. } => with.as_ref(),
            StoopPhrase::None | StoopPhrase::Solid => None,
        }
    }

    /// Whether the slab is raised as high as its steps.
    pub fn is_stoop(&self) -> bool {
        let stoop = self.stoop.as_ref().map(|stoop| &stoop.value);
        matches!(stoop, Some(StoopPhrase::Solid | StoopPhrase::Filled { .. }))
    }
}

impl Steps {
    /// From the ground to the top.
    pub fn height(&self) -> Length {
        self.rise.value * i64::from(self.risers.value)
    }

    /// How thick they are below each tread, where their bottom goes up with them.
    pub fn thick(&self) -> Option<At<Length>> {
        let bottom = self.bottom.as_ref()?;
        match bottom.value {
            StepsBottom::Level => None,
            StepsBottom::Stepped(thick) => Some(At::new(thick, bottom.place)),
        }
    }

    /// Steps below the slab's own edge.
    pub fn treads(&self) -> u32 {
        self.risers.value - 1
    }
}
