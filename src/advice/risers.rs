//! Is a riser too tall to climb well?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::steps::{SOURCE, TALLEST_RISER};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        // A slab upon another is a single step of its own thickness.
        let (rise, place) = match &slab.sections.steps {
            Some(steps) => (steps.rise.value, steps.rise.place),
            None if slab.on.is_some() => (slab.thickest(), slab.thickness.place),
            None => return None,
        };
        (TALLEST_RISER < rise).then(|| {
            let message = format!(
                "a riser of `{rise}` at `{}` is over `{TALLEST_RISER}`",
                slab.key
            );
            Problem::new("tall-riser", message).at(place).help(format!(
                "make it one riser more; source: {SOURCE}; {DECIDES}"
            ))
        })
    });
    answers.collect()
}
