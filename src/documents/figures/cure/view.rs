//! What the cure figure shows.

use super::words::CureWords;
use crate::press::drawing::Rgb;
use crate::trade::curing::{Milestone, Timeline, Use};

/// What the figure is drawn from.
#[derive(Clone, Debug)]
pub struct CureView<'a> {
    pub timeline: &'a Timeline,
    /// The uses that get a bar, in any order; a garden walk needs no cars.
    pub uses: &'a [Use],
    /// Whether de-icer is a question where this slab lies.
    pub deicer: bool,
    /// The strength ordered, for example `4,000 psi`.
    pub ordered: &'a str,
    /// The owner's colour, dark enough to be read on white and to carry white words.
    pub accent: Rgb,
    pub words: &'a CureWords,
}

impl CureView<'_> {
    /// The milestones that get a bar, lightest use first.
    pub fn milestones(&self) -> Vec<Milestone> {
        let wanted = |milestone: &&Milestone| self.uses.contains(&milestone.use_);
        let all = &self.timeline.milestones;
        all.iter().filter(wanted).copied().collect()
    }
}
