//! Does what should slide slide, and does what should hold hold?

use super::{Case, DECIDES};
use crate::input::job::Pin;
use crate::reading::Problem;
use crate::tables::{Read, Source};

const SOURCE: Source = Source::new("UFC 3-270-04", "before paragraph 4.8", Read::Primary);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let answers = case.slabs().flat_map(|(slab, measured)| {
        measured.dowels.iter().filter_map(move |one| {
            let stock = case.book.rules.dowels.get(&one.kind)?;
            let (what, help) = match (one.pin, stock.bar.value.is_smooth()) {
                (Pin::Dowels, true) | (Pin::Ties, false) => return None,
                (Pin::Dowels, false) => (
                    "doweled with deformed bars, which grip and cannot slide",
                    "take a smooth bar, or write `tied` where the slab need not move",
                ),
                (Pin::Ties, true) => (
                    "tied with smooth bars, which slide and cannot hold",
                    "take a deformed bar, or write `doweled` where the slab has to move",
                ),
            };
            let message = format!("`{}` is {what}", slab.key);
            Some(
                Problem::new("dowel-that-grips", message)
                    .at(stock.bar.place)
                    .help(format!("{help}; tie bars belong only where no movement is meant ({SOURCE}); {DECIDES}")),
            )
        })
    });
    answers.collect()
}
