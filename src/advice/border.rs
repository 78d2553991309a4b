//! Has every border an edge to run along?

use super::Case;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().filter_map(|(slab, measured)| {
        let border = slab.border.as_ref().filter(|_| measured.border.is_none())?;
        let message = format!("`{}` has a border, but no open edge for it", slab.key);
        Some(
            Problem::new("border-nowhere", message)
                .at(border.width.place)
                .help("a border runs along open edges only; take it out, or look at the edges"),
        )
    });
    answers.collect()
}
