//! Is a surface closed by a steel trowel over concrete with much air?

use super::{Case, DECIDES};
use crate::input::book::Finish;
use crate::input::job::Carries;
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
            let way_out = if case.freezes(slab) {
                "here the air matters: keep it, and write a finish by float or broom; where a roof and walls keep the slab dry write `inside: yes`"
            } else if slab.carries() == Carries::People {
                "here it does not freeze wet: order it without added air"
            } else {
                "here it does not freeze wet: order it without added air; where cars drip and nobody heats, 3% with 4,000 psi is common practice"
            };
            Problem::new("air-under-trowel", message)
                .at(finish.place)
                .help(format!("{way_out}; source: {TROWEL_SOURCE}; {DECIDES}"))
        })
    });
    answers.collect()
}
