//! A job whose every name is known: mixes, kinds, bars. It has no prices, so the
//! same one can be priced for any day, from any book.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::written::{Customer, Extra, JobHead};
use super::{Access, Bars, Choice, Dowels, EdgePart, OptionGroup};
use crate::geometry::{Outline, Point};
use crate::input::phrases::{Carries, FallTo, Sawn, SizePhrase, SteelAtJoints, Thickness};
use crate::reading::{At, Place};
use crate::values::{Amount, Day, Length, Percent};

#[derive(Clone, Debug)]
pub struct Takeoff {
    pub place: Place,
    pub name: String,
    pub customer: Customer,
    pub head: JobHead,
    pub slabs: Vec<Arc<Slab>>,
    pub placements: Vec<Placement>,
    /// What the options that are taken add.
    pub added: Vec<Extra>,
    pub options: Arc<[OptionGroup]>,
    /// The job with every other choice than as quoted.
    pub otherwise: BTreeMap<Choice, Takeoff>,
}

impl Takeoff {
    /// The way to the slabs of a pour: its own, else that of the job.
    pub fn access_of(&self, placement: usize) -> &Access {
        let own = self.placements.get(placement);
        own.and_then(|pour| pour.access.as_ref())
            .unwrap_or(&self.head.access)
    }

    /// What is ordered over the drawing of a slab: its own, else that of its pour or of the job, else
    /// that of its kind; none leaves it to the business.
    pub fn allowance_of<'a>(&'a self, slab: &'a Slab) -> Option<&'a At<Percent>> {
        let of_kind = slab.usual.contains(&"allowance");
        let own = slab.allowance.as_ref();
        let pour = self.placements.get(slab.placement);
        own.filter(|_| !of_kind)
            .or_else(|| pour.and_then(|pour| pour.allowance.as_ref()))
            .or(self.head.allowance.as_ref())
            .or(own)
    }

    /// As it is expected while a pour sets: its own, else that of the job.
    pub fn temperature_of(&self, placement: usize) -> Option<&At<Amount>> {
        let own = self.placements.get(placement);
        own.and_then(|pour| pour.temperature.as_ref())
            .or(self.head.temperature.as_ref())
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

    /// The job when this is chosen.
    pub fn with(&self, choice: &Choice) -> &Self {
        self.otherwise.get(choice).unwrap_or(self)
    }

    /// The pours that have a slab, each with its number; a choice may leave one without.
    pub fn pours(&self) -> impl Iterator<Item = (usize, &Placement)> {
        let placements = self.placements.iter().enumerate();
        placements.filter(|(i, _)| self.slabs.iter().any(|slab| slab.placement == *i))
    }

    /// The number of the first of them; what serves the whole job is bought for its day.
    pub fn first_pour(&self) -> usize {
        self.pours().next().map_or(0, |(number, _)| number)
    }
}

#[derive(Clone, Debug)]
pub struct Slab {
    pub key: String,
    /// Where its key stands.
    pub place: Place,
    /// What the customer reads.
    pub called: String,
    pub kind: String,
    /// On the site: x east, y north.
    pub outline: Outline,
    /// Where its size, its sides or its corners stand.
    pub outline_place: Place,
    /// As a size, when it was given as one.
    pub size: Option<At<SizePhrase>>,
    /// Of a path, square to its middle line.
    pub width: Option<At<Length>>,
    /// Of the thin end where the slab is not even.
    pub thickness: At<Thickness>,
    /// In place of the business's.
    pub allowance: Option<At<Percent>>,
    pub mix: At<String>,
    pub base: Option<super::Base>,
    pub bars: Option<Bars>,
    /// Across every corner that turns into it.
    pub corner_bars: Option<super::CornerBars>,
    pub mesh: Option<At<String>>,
    /// Of its bars and its mesh.
    pub steel_at_joints: SteelAtJoints,
    /// Across its doweled edges.
    pub dowels: Option<Dowels>,
    /// Across its tied edges.
    pub ties: Option<Dowels>,
    pub fiber: Option<At<String>>,
    pub finish: At<String>,
    pub border: Option<Border>,
    /// All through the concrete.
    pub color: Option<At<String>>,
    /// Put on when it has hardened.
    pub seal: Option<At<String>>,
    pub curing: At<crate::input::book::Curing>,
    /// Longest side of a panel; none where no joints are cut.
    pub joints: Option<At<Length>>,
    /// Joints as their owner draws them; there is no layout then.
    pub drawn: Vec<At<(Point, Point)>>,
    /// Where joints of what stays end at its edge.
    pub matched: Vec<At<Point>>,
    /// How its joints are cut, where that is said.
    pub sawn: Option<At<Sawn>>,
    /// Each with its part of the slab; none where it is level.
    pub falls: Vec<Fall>,
    /// Shot at its corners; its falls follow from them.
    pub levels: Option<super::Levels>,
    /// Its bottom is level below its fall.
    pub is_level_below: bool,
    /// How much lower than the slab it lies beside, and that slab.
    pub lower: Option<(At<Length>, String)>,
    pub sections: super::Sections,
    pub edges: Vec<EdgePart>,
    /// One for each of the outline's holes, in their order.
    pub openings: Vec<Opening>,
    pub boxes: Vec<super::SetBox>,
    pub around: super::Around,
    /// Where it is said; `Slab::carries` and `Slab::is_inside` answer in any case.
    pub carries: Option<At<Carries>>,
    pub inside: Option<At<bool>>,
    /// Nobody said where it lies.
    pub stands_alone: bool,
    /// The slab it stands on.
    pub on: Option<String>,
    /// Keys whose value came from the kind.
    pub usual: Vec<&'static str>,
    /// Number of its pour in `Takeoff::placements`.
    pub placement: usize,
}

/// What is left open in a slab.
#[derive(Clone, Debug)]
pub struct Opening {
    pub name: At<String>,
    /// As a size, when it was given as one.
    pub size: Option<At<SizePhrase>>,
    /// Of the sides of its hole.
    pub edges: Vec<EdgePart>,
    /// The middle of a ring: part of the slab's own shape, and taken off however small it is.
    pub of_ring: bool,
}

/// A band of another finish along the open edges.
#[derive(Clone, Debug)]
pub struct Border {
    pub width: At<Length>,
    pub finish: At<String>,
}

#[derive(Clone, Debug)]
pub struct Fall {
    /// For each foot.
    pub rise: At<Length>,
    pub to: FallTo,
    /// The owner's words for the part that has it.
    pub part: Option<String>,
}

/// What is poured on one day.
#[derive(Clone, Debug)]
pub struct Placement {
    pub day: Option<At<Day>>,
    /// Where it is not that of the job.
    pub access: Option<Access>,
    /// Over its drawing, where it is not that of the job.
    pub allowance: Option<At<Percent>>,
    /// As it is expected while it sets, where it is not that of the job.
    pub temperature: Option<At<Amount>>,
}
