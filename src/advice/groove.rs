//! Does the owner's tool cut the joints deep enough? Asked only where its depth is known.

use super::{Case, DECIDES};
use crate::reading::Problem;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("UFGS 03300N", "sections 3.8.3 to 3.8.5", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let Some(tool) = &case.business.order.groove else {
        return Vec::new();
    };
    // A layout of a single panel has nothing to cut.
    let jointed = case
        .slabs()
        .filter(|(_, measured)| measured.is_jointed())
        .map(|(slab, _)| slab)
        .filter(|slab| !slab.is_sawn());
    let shallow = jointed.filter(|slab| tool.value < slab.groove());
    // The deepest cut of the job decides which tool is brought along.
    let deepest = shallow.max_by(|a, b| {
        let by_depth = a.groove().cmp(&b.groove());
        by_depth.then(b.place.cmp(&a.place))
    });
    let answer = deepest.map(|slab| {
        let (thickness, cut) = (slab.thickest(), slab.groove());
        let message = format!(
            "joints of `{}` are to be cut `{cut}` deep in `{thickness}`, and your tool cuts `{}`",
            slab.key, tool.value
        );
        Problem::new("groove-depth", message)
            .at(slab.thickness.place)
            .also(tool.place, "your tool")
            .help(format!(
                "bring a deeper tool or saw: a quarter of the slab, 1 in at least; source: {SOURCE}; {DECIDES}"
            ))
    });
    answer.into_iter().collect()
}
