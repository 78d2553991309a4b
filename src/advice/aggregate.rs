//! Is the stone small enough for the slab?

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::aggregate::{largest_usual, limit};
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("US Army training text EN5466", "", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.takeoff.slabs.iter().filter_map(|slab| {
        let (thickness, stone) = (slab.thickness.value.thin, case.mix(slab)?.aggregate.value);
        (limit(thickness) < stone).then(|| {
            let message = format!(
                "stone of `{stone}` is more than a third of `{}`, which is `{thickness}` thick",
                slab.key
            );
            let order = largest_usual(thickness).map_or_else(
                || "make the slab thicker".to_owned(),
                |size| format!("order a mix with stone of {size} or less"),
            );
            Problem::new("large-stone", message)
                .at(slab.mix.place)
                .help(format!("{order}; source: {SOURCE}; {DECIDES}"))
        })
    });
    answers.collect()
}
