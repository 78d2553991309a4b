//! Is a surface closed by a steel trowel over concrete with much air?

use super::{Case, DECIDES};
use crate::input::book::Finish;
use crate::reading::Problem;
use crate::tables::air::{MOST_UNDER_TROWEL, TROWEL_SOURCE};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let finishes = &case.book.rules.finishes;
    let surfaces = case.takeoff.slabs.iter().flat_map(|slab| {
        let border = slab.border.iter().map(|border| &border.finish);
        [&slab.finish]
            .into_iter()
            .chain(border)
            .map(move |finish| (slab, finish))
    });
    let answers = surfaces.filter_map(|(slab, finish)| {
        let name = &finish.value;
        let mix = case.mix(slab)?;
        let blisters = Finish::is_troweled(name, finishes.get(name))
            && MOST_UNDER_TROWEL < mix.air.value;
        blisters.then(|| {
            let message = format!(
                "`{}` of `{}` has `{}` air under the finish `{name}`; a hard-troweled surface may blister and peel over {MOST_UNDER_TROWEL}",
                slab.mix.value, slab.key, mix.air.value
            );
            Problem::new("air-under-trowel", message)
                .at(finish.place)
                .help(format!(
                    "order it without added air where it never freezes, or finish it with a float and broom where it does; source: {TROWEL_SOURCE}; {DECIDES}"
                ))
        })
    });
    answers.collect()
}
