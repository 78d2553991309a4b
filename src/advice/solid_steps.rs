//! Is a long flight counted solid where the ground may rise with it?

use super::Case;
use crate::reading::Problem;
use crate::tables::Source;
use crate::values::{Amount, Unit, rounding};

/// Risers from which a flight more often lies on a slope; common practice, no source.
const LONG: u32 = 4;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().filter_map(|(slab, measured)| {
        let steps = slab.sections.steps.as_ref()?;
        let concrete = measured.steps.as_ref()?.concrete.as_ref()?;
        let risers = steps.risers.value;
        (LONG <= risers && !slab.sections.is_stoop() && steps.bottom.is_none()).then(|| {
            let message = format!(
                "the {risers} steps of `{}` are counted solid down to their foot, `{}`",
                slab.key,
                Amount::new(rounding::to_places(concrete.value(), 1), Unit::CubicYard)
            );
            Problem::new("solid-steps", message)
                .at(steps.risers.place)
                .help(format!(
                    "where they lie on a slope the ground takes the place of the most of it: say how thick they are below each tread, more than the {} of a riser, `bottom: 12 in thick`; else `bottom: level` ({})",
                    steps.rise.value,
                    Source::PRACTICE
                ))
        })
    });
    answers.collect()
}
