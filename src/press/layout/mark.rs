//! Rules, and how far marks reach.

use crate::press::drawing::{PagePoint, Path, Rgb, Stroke};
use crate::press::page::{Ink, Mark, Run};
use crate::press::text;

/// A straight line of the layout itself.
pub(super) fn rule(from: PagePoint, to: PagePoint, width: f32, color: Rgb) -> Mark {
    Mark::layout(Path::open(&[from, to], Stroke::solid(color, width)))
}

/// Length of a run along its baseline, in points.
pub(super) fn run_length(run: &Run) -> f32 {
    text::width(&run.glyphs, run.size)
}

/// The leftmost and rightmost ends of the words among these marks.
pub(super) fn words_reach(marks: &[Mark]) -> Option<(f32, f32)> {
    marks
        .iter()
        .filter_map(|mark| match &mark.ink {
            Ink::Glyphs(run) => Some((run.at.x, run.at.x + run_length(run))),
            Ink::Path(_) | Ink::Picture(_) => None,
        })
        .reduce(|all, one| (all.0.min(one.0), all.1.max(one.1)))
}
