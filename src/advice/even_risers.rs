//! Do the risers make the height that was measured, all of them alike?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::steps::{SOURCE, UNEVEN};
use crate::values::Length;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let steps = slab.sections.steps.as_ref()?;
        let total = steps.total.as_ref()?;
        let (risers, rise) = (i64::from(steps.risers.value), steps.rise.value);
        // All but one as written leave this one.
        let odd = total.value - rise * (risers - 1);
        (UNEVEN < (odd - rise).abs()).then(|| {
            let one = if odd <= Length::ZERO {
                "there is no room for one of them".to_owned()
            } else {
                format!("one of them would be `{odd}`")
            };
            let message = format!(
                "{risers} risers of `{rise}` at `{}` make `{}`, and `{}` was measured: {one}",
                slab.key,
                steps.height(),
                total.value
            );
            let each = Length::nanometres(total.value.as_nanometres() / risers);
            Problem::new("uneven-risers", message)
                .at(total.place)
                .also(steps.rise.place, "the riser")
                .help(format!(
                    "{risers} risers of {each} would be even; the largest and the smallest differ by {UNEVEN} at most; source: {SOURCE}; {DECIDES}"
                ))
        })
    });
    answers.collect()
}
