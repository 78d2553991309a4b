//! Has the mix enough air for frost?

use super::{Case, DECIDES};
use crate::input::job::Exposure;
use crate::reading::Problem;
use crate::tables::air::{SOURCE, air};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    if case.takeoff.head.exposure.value == Exposure::Mild {
        return Vec::new();
    }
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let mix = case.mix(slab)?;
        // Slabs on the ground freeze while they are wet.
        let asked = air(mix.aggregate.value)?;
        (mix.air.value < asked).then(|| {
            let message = format!(
                "`{}` of `{}` has `{}` air; `{asked}` is asked for against frost with stone of {}",
                slab.mix.value, slab.key, mix.air.value, mix.aggregate.value
            );
            Problem::new("little-air", message)
                .at(slab.mix.place)
                .help(format!("order {asked} air; source: {SOURCE}; {DECIDES}"))
        })
    });
    answers.collect()
}
