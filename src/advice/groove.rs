//! How deep must the joints be cut? Said once a job, for the usual 3/4 in groover does not reach.

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::joints::groove_depth;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("UFGS 03300N", "sections 3.8.3 to 3.8.5", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    // A layout of a single panel has nothing to cut.
    let jointed = case
        .slabs()
        .filter(|(_, measured)| {
            let joints = measured.joints.as_ref();
            joints.is_some_and(|joints| !joints.panels.lines.is_empty())
        })
        .map(|(slab, _)| slab);
    // The deepest cut of the job decides which tool is brought along.
    let deepest = jointed.max_by(|a, b| {
        let by_depth = groove_depth(a.thickest()).cmp(&groove_depth(b.thickest()));
        by_depth.then(b.place.cmp(&a.place))
    });
    let answer = deepest.map(|slab| {
        let (thickness, cut) = (slab.thickest(), groove_depth(slab.thickest()));
        let message = format!(
            "joints of `{}` are cut `{cut}` deep; a 3/4 in groove alone is too shallow for `{thickness}`",
            slab.key
        );
        Problem::new("groove-depth", message)
            .at(slab.thickness.place)
            .help(format!(
                "tool or saw a quarter of the slab, 1 in at least; source: {SOURCE}; {DECIDES}"
            ))
    });
    answer.into_iter().collect()
}
