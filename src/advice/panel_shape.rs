//! Are the panels near enough to square?

use super::{Case, DECIDES};
use crate::geometry::{LONGEST_RATIO, PREFERRED_RATIO};
use crate::reading::Problem;
use crate::tables::{Read, Source};
use crate::values::rounding::to_places;

const SOURCE: Source = Source::new("a trade magazine's column on joints", "", Read::Secondary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().filter_map(|(slab, measured)| {
        let joints = measured.joints.as_ref()?;
        let ratio = joints.panels.worst_ratio;
        if ratio <= PREFERRED_RATIO || slab.outline.is_narrow() {
            return None;
        }
        let how = if LONGEST_RATIO < ratio {
            "1.5 is never to be passed"
        } else {
            "1.25 is better"
        };
        let message = format!(
            "a panel of `{}` is `{}` times as long as wide; {how}",
            slab.key,
            to_places(ratio, 2).normalize()
        );
        let place = slab.joints.as_ref().map_or(slab.place, |joints| joints.place);
        Some(Problem::new("long-panel", message).at(place).help(format!(
            "set `joints` nearer to the short side, so that panels come out square; source: {SOURCE}; {DECIDES}"
        )))
    });
    answers.collect()
}
