//! The cure figure: a band of strength above, a bar for each use below, one axis of days.
//!
//! 516 points wide, at most 288 high. The band runs from cool (dashed) to warm
//! (solid); a bar is open while the slab must wait, hatched where it depends on
//! the weather, solid once it may be used. Dotted drops join the two.

mod alternative;
mod band;
mod bars;
mod frame;
mod key;
#[cfg(test)]
mod laws;
pub mod pen;
mod words;

use crate::press::drawing::{Drawing, Rgb, Size};
use crate::trade::curing::{Milestone, Timeline, Use};

use frame::Frame;
pub use words::CureWords;

/// What the figure is drawn from.
#[derive(Clone, Debug)]
pub struct CureView<'a> {
    pub timeline: &'a Timeline,
    /// The uses that get a bar, in any order; a garden walk needs no cars.
    pub uses: &'a [Use],
    /// The strength ordered, for example `4,000 psi`.
    pub ordered: &'a str,
    /// The owner's colour, dark enough to be read on white and to carry white words.
    pub accent: Rgb,
    pub words: &'a CureWords,
}

impl CureView<'_> {
    /// The milestones that get a bar, lightest use first.
    fn milestones(&self) -> Vec<Milestone> {
        let wanted = |milestone: &&Milestone| self.uses.contains(&milestone.use_);
        let all = &self.timeline.milestones;
        all.iter().filter(wanted).copied().collect()
    }
}

/// Draws the figure.
pub fn cure(view: &CureView) -> Drawing {
    let frame = Frame::new(view);
    let mut shapes = band::grid(view, &frame);
    shapes.extend(band::band(view, &frame));
    shapes.extend(band::drops(view, &frame));
    shapes.extend(band::labels(view, &frame));
    shapes.extend(bars::bars(view, &frame));
    shapes.extend(key::key(view, &frame));
    Drawing {
        size: Size {
            width: frame::WIDTH,
            height: frame.height(),
        },
        shapes,
        alternative: alternative::alternative(view, &frame),
    }
}
