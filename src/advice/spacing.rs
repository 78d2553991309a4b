//! Do the joints stand closer than the slab's thickness asks?

use super::{Case, DECIDES};
use crate::input::book::Mix;
use crate::input::job::Slab;
use crate::reading::Problem;
use crate::tables::joints::WALK_SPACING;
use crate::tables::{Read, Source};
use crate::trade::measure::{panel_size, spacing_by_thickness};
use crate::values::Length;

const BY_THICKNESS: Source = Source::new(
    "Portland Cement Association table and NRMCA CIP 6",
    "",
    Read::Secondary,
);
const WALKS: Source = Source::new("UFGS 03300N", "sections 3.8.3 to 3.8.5", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().filter_map(|(slab, measured)| {
        let panels = &measured.joints.as_ref()?.layout.panels;
        let longest = panels.iter().map(|panel| panel_size(panel).0).max()?;
        let (limit, source) = limit(slab, case.mix(slab));
        (limit < longest).then(|| {
            let message = format!(
                "panels of `{}` are up to `{longest}` long; `{limit}` is the most for a slab `{}` thick",
                slab.key, slab.thickness.value.thin
            );
            let place = slab.joints.as_ref().map_or(slab.place, |joints| joints.place);
            Problem::new("joints-far-apart", message)
                .at(place)
                .help(format!("write `joints: {limit}` or less; source: {source}; {DECIDES}"))
        })
    });
    answers.collect()
}

/// The longest panel, and who says so; walks have a rule of their own.
pub(super) fn limit(slab: &Slab, mix: Option<&Mix>) -> (Length, Source) {
    let limit = spacing_by_thickness(slab, mix);
    if slab.kind == "walk" && WALK_SPACING < limit {
        (WALK_SPACING, WALKS)
    } else {
        (limit, BY_THICKNESS)
    }
}
