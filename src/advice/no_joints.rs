//! Is a slab larger than one panel poured without joints?

use super::{Case, DECIDES, spacing};
use crate::reading::Problem;
use crate::values::Length;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let bare = case
        .slabs()
        .filter(|(_, measured)| measured.joints.is_none());
    let answers = bare.filter_map(|(slab, _)| {
        let (low, high) = slab.outline.bounds();
        let long = Length::nanometres((high.x - low.x).max(high.y - low.y));
        let (limit, source) = spacing::limit(slab, case.mix(slab));
        (limit < long).then(|| {
            let message = format!("`{}` is `{long}` long and has no joints", slab.key);
            Problem::new("no-joints", message)
                .at(slab.place)
                .help(format!("write `joints: {limit}` or less, or it will choose its own cracks; source: {source}; {DECIDES}"))
        })
    });
    answers.collect()
}
