//! Does what a building or a house rests on go below frost?

use super::{Case, DECIDES};
use crate::input::job::{Exposure, Slab};
use crate::reading::Problem;
use crate::tables::Source;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let slabs = case.takeoff.slabs.iter();
    slabs.filter_map(|slab| of_slab(case, slab)).collect()
}

fn of_slab(case: Case<'_>, slab: &Slab) -> Option<Problem> {
    let edge = slab.sections.thickened.as_ref();
    let edge = edge.filter(|_| slab.carries_building());
    let what = match (edge, slab.is_stoop_at_house()) {
        (Some(_), _) => "a building stands on the thick edge of",
        (None, true) => "the house stands beside",
        (None, false) => return None,
    };
    let Some(frost) = &case.business.frost_depth else {
        if case.exposure() == Exposure::Mild {
            return None;
        }
        let message = format!(
            "{what} `{}`, and nobody says how deep the ground freezes",
            slab.key
        );
        return Some(
            Problem::new("frost-depth-unsaid", message)
                .at(slab.place)
                .help(format!(
                    "ask the town, and write `frost depth: 36 in`, or what it is, into business.yaml ({}); {DECIDES}",
                    Source::PRACTICE
                )),
        );
    };
    let (deep, place) = match edge {
        Some(edge) => (
            format!("goes `{}` down", edge.depth.value),
            edge.depth.place,
        ),
        None => ("lies on the ground".to_owned(), slab.place),
    };
    if edge.is_some_and(|edge| frost.value <= edge.depth.value) {
        return None;
    }
    let message = format!(
        "{what} `{}`, which {deep}, and the ground freezes `{}` deep",
        slab.key,
        frost.value.in_inches()
    );
    Some(
        Problem::new("above-frost", message)
            .at(place)
            .also(frost.place, "your frost depth")
            .help(format!(
                "frost lifts it: ask what the town has under it; the quote says that footings below frost are not included ({}); {DECIDES}",
                Source::PRACTICE
            )),
    )
}
