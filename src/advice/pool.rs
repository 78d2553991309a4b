//! Has somebody thought of the electrician at a pool?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::Source;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    let answers = slabs.filter(|slab| slab.is_at_pool()).map(|slab| {
        let message = format!(
            "`{}` lies at a pool, where metal within reach of the water is bonded",
            slab.key
        );
        Problem::new("pool-bonding", message)
            .at(slab.place)
            .help(format!(
                "before you pour, let a licensed electrician bond the steel, or a wire where there is none, and the town look at it ({}); {DECIDES}",
                Source::PRACTICE
            ))
    });
    answers.collect()
}
