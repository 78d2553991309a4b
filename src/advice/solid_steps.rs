//! Are steps on a slope counted down to their lowest level without a word?

use super::Case;
use crate::reading::Problem;
use crate::tables::Source;

/// A slab on the ground with steps down from it has ground that goes down too; a stoop is raised.
pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().filter_map(|(slab, found)| {
        let steps = slab.sections.steps.as_ref()?;
        let is_told = steps.bottom.is_some() || slab.sections.is_stoop() || steps.treads() < 2;
        let concrete = found.steps.as_ref()?.concrete.as_ref().filter(|_| !is_told)?;
        let message = format!(
            "the steps of `{}` are counted solid down to the lowest level: `{}`",
            slab.key,
            concrete.amount()
        );
        let least = steps.rise.value;
        Some(Problem::new("solid-steps", message).at(steps.risers.place).help(format!(
            "where the ground goes up with them, say how thick they are below each tread, more than the {least} of a riser: `bottom: 12 in thick`; else `bottom: level` ({})",
            Source::PRACTICE
        )))
    });
    answers.collect()
}
