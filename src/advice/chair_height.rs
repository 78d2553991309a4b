//! Do the chairs hold the steel where it belongs?

use std::collections::BTreeMap;

use super::{Case, DECIDES};
use crate::reading::{Place, Problem};
use crate::tables::{Read, Source, cover};
use crate::trade::order::chairs::chair;

const COVER: Source = Source::new("US Army TI 809-28", "", Read::Primary);
const OFF: Source = Source::new("ACI 117-06", "", Read::Secondary);

/// Slabs that are thick alike and stand on the same chairs are told together.
pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let mut off: BTreeMap<_, (Vec<&str>, Place)> = BTreeMap::new();
    for slab in &case.takeoff.slabs {
        let Some(chair) = chair(slab, &case.book.rules) else {
            continue;
        };
        if let (Some(by), Some(height)) = (chair.is_off(), chair.height) {
            let low = height.value < chair.wanted.0;
            let thin = slab.thickness.value.thin;
            let alike = (thin, height.value, height.place, by, low, chair.wanted);
            let (names, _) = off
                .entry(alike)
                .or_insert_with(|| (Vec::new(), slab.thickness.place));
            names.push(&slab.key);
        }
    }
    let answers = off.into_iter().map(|(alike, (names, place))| {
        let (thin, height, chairs, by, low, (from, to)) = alike;
        let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
        let way = if low { "below the middle" } else { "into the cover" };
        let message = format!(
            "chairs of {height} hold the steel of {} `{by}` {way}, {thin} thick",
            names.join(", ")
        );
        Problem::new("chair-height", message)
            .at(place)
            .also(chairs, "the nearest chair of the book")
            .help(format!(
                "take chairs of {from} to {to} into the book, with their `height`: the steel lies between the middle and {} below the top ({COVER}), and {} off is allowed ({OFF}); or set it on blocks; {DECIDES}",
                cover::top_cover(thin),
                cover::CHAIR_TOLERANCE,
            ))
    });
    answers.collect()
}
