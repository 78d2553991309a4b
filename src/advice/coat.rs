//! Does a sprayed curing compound stand in the way of a sealer, or spot a color?

use super::Case;
use crate::input::book::Curing;
use crate::reading::Problem;
use crate::tables::{Read, Source};

/// A curing compound keeps a later sealer or coating from holding, unless it is removed.
const UNDER_SEALER: Source = Source::new(
    "a maker of both, quoted by the trade press",
    "",
    Read::Secondary,
);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let sprayed = case
        .takeoff
        .slabs
        .iter()
        .filter(|slab| slab.curing.value == Curing::Compound);
    let answers = sprayed.filter_map(|slab| {
        let (at, message, source) = match (&slab.seal, &slab.color) {
            (Some(seal), _) => (
                seal.place,
                format!(
                    "`{}` is cured with a compound and then sealed; a sealer does not hold on most compounds",
                    slab.key
                ),
                UNDER_SEALER,
            ),
            (None, Some(color)) => (
                color.place,
                format!(
                    "`{}` is colored and cured with a compound, which may leave it spotted",
                    slab.key
                ),
                Source::PRACTICE,
            ),
            (None, None) => return None,
        };
        Some(Problem::new("compound-in-the-way", message).at(at).help(format!(
            "say `curing: cover`, `wet` or `none` below the slab or its finish, or ask the maker whether the two go together; source: {source}"
        )))
    });
    answers.collect()
}
