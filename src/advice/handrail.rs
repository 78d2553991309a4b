//! Has somebody asked whether the steps need a rail?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::steps::{RAIL_FROM, RAIL_SOURCE};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let steps = slab.sections.steps.as_ref()?;
        let risers = &steps.risers;
        (RAIL_FROM <= risers.value).then(|| {
            let message = format!("the steps at `{}` have {} risers", slab.key, risers.value);
            Problem::new("handrail", message)
                .at(risers.place)
                .help(format!(
                    "ask whether they need a rail, and set its sleeves before the pour; {RAIL_FROM} risers or more is where one is asked for; source: {RAIL_SOURCE}; {DECIDES}"
                ))
        })
    });
    answers.collect()
}
