//! Is a tread too shallow for a foot?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::steps::{SHALLOWEST_TREAD, SOURCE};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let tread = slab.sections.steps.as_ref()?.tread.as_ref()?;
        (tread.value < SHALLOWEST_TREAD).then(|| {
            let message = format!(
                "treads of `{}` at `{}` are under `{SHALLOWEST_TREAD}`",
                tread.value, slab.key
            );
            Problem::new("shallow-tread", message)
                .at(tread.place)
                .help(format!("make them deeper; source: {SOURCE}; {DECIDES}"))
        })
    });
    answers.collect()
}
