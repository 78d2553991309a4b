//! Has the mix enough air for frost?

use super::{Case, DECIDES};
use crate::input::book::Finish;
use crate::reading::Problem;
use crate::tables::air::{SOURCE, air};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        if !case.freezes(slab) {
            return None;
        }
        let mix = case.mix(slab)?;
        // Slabs on the ground freeze while they are wet.
        let asked = air(mix.aggregate.value)?;
        (mix.air.value < asked).then(|| {
            let message = format!(
                "`{}` of `{}` has `{}` air; `{asked}` is asked for against frost with stone of {}",
                slab.mix.value, slab.key, mix.air.value, mix.aggregate.value
            );
            let finish = &slab.finish.value;
            let entry = case.book.rules.finishes.get(finish);
            let untroweled = if Finish::is_troweled(finish, entry) {
                " and leave the steel trowel off, for outdoors the air matters and the two do not go together"
            } else {
                ""
            };
            Problem::new("little-air", message)
                .at(slab.mix.place)
                .help(format!(
                    "order {asked} air{untroweled}; where a roof and walls keep it dry write `inside: yes`; source: {SOURCE}; {DECIDES}"
                ))
        })
    });
    answers.collect()
}
