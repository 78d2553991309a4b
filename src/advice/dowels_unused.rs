//! Are dowels named for a slab that has no edge for them?

use super::Case;
use crate::input::job::Pin;
use crate::reading::Problem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().flat_map(|(slab, measured)| {
        let named = [
            (Pin::Dowels, &slab.dowels, "doweled"),
            (Pin::Ties, &slab.ties, "tied"),
        ];
        named.into_iter().filter_map(move |(pin, dowels, edge)| {
            // What a kind names is there for the slabs that have such an edge.
            let dowels = dowels.as_ref().filter(|_| !slab.usual.contains(&pin.name()))?;
            if measured.dowels.iter().any(|one| one.pin == pin) {
                return None;
            }
            let message = format!(
                "`{}` names {}, and none of its edges is {edge}",
                slab.key,
                pin.name()
            );
            Some(
                Problem::new("dowels-unused", message)
                    .at(dowels.kind.place)
                    .help(format!(
                        "mark the edge, for example `edges: {{east: {edge} existing concrete}}`, or take `{}` out; nothing is charged for them now",
                        pin.name()
                    )),
            )
        })
    });
    answers.collect()
}
