//! Which kind of dowel crosses the edges of a slab.

use super::names::known;
use crate::input::book::{DowelStock, PriceBook};
use crate::input::job::{Dowels, EdgePart, Pin};
use crate::input::phrases::DowelsPhrase;
use crate::reading::{At, Problem, Problems, Read};

/// None for a slab that has no such edge and names none. A slab that names no kind takes the only one of the book that fits: smooth bars
/// where it slides, deformed ones where it is tied.
pub(super) fn across(
    pin: Pin,
    written: Option<At<DowelsPhrase>>,
    edges: &[EdgePart],
    slab: &At<String>,
    book: &PriceBook,
    problems: &mut Problems,
) -> Read<Option<Dowels>> {
    let kinds = &book.rules.dowels;
    if let Some(At { value, place }) = written {
        let kind = At {
            value: value.kind,
            place,
        };
        let stock = known(&kind, kinds, "kind of dowel", problems)?;
        let spacing = value
            .spacing
            .map_or_else(|| stock.spacing.clone(), |value| At { value, place });
        return Ok(Some(Dowels { kind, spacing }));
    }
    if !edges.iter().any(|part| part.kind.pin() == Some(pin)) {
        return Ok(None);
    }
    let fits = |stock: &DowelStock| stock.bar.value.is_smooth() == (pin == Pin::Dowels);
    let fitting: Vec<(&String, &DowelStock)> =
        kinds.iter().filter(|(_, stock)| fits(stock)).collect();
    if let [(name, stock)] = fitting[..] {
        return Ok(Some(Dowels {
            kind: At {
                value: name.clone(),
                place: slab.place,
            },
            spacing: stock.spacing.clone(),
        }));
    }
    Err(problems.push(unclear(pin, slab, &fitting)))
}

fn unclear(pin: Pin, slab: &At<String>, fitting: &[(&String, &DowelStock)]) -> Problem {
    let (edge, bar, example) = match pin {
        Pin::Dowels => (
            "doweled",
            "smooth",
            "smooth: {item: dowel 1/2 in, bar: 1/2 in smooth}",
        ),
        Pin::Ties => (
            "tied",
            "deformed",
            "no. 4 ties: {item: tie no. 4, bar: no. 4, adhesive: adhesive cartridge}",
        ),
    };
    let (name, key) = (&slab.value, pin.name());
    let names: Vec<&str> = fitting.iter().map(|(name, _)| name.as_str()).collect();
    if names.is_empty() {
        return Problem::new(
            "no-dowels",
            format!("`{name}` has a {edge} edge, and the price book has no {bar} bars for it"),
        )
        .at(slab.place)
        .help(format!(
            "add them under `dowels` of the price book, for example `{example}`"
        ));
    }
    Problem::new(
        "which-dowels",
        format!(
            "`{name}` has a {edge} edge, and the price book has several kinds of {bar} bars for it"
        ),
    )
    .at(slab.place)
    .help(format!(
        "write `{key}: {}` below it; the kinds are {}",
        names[0],
        names.join(", ")
    ))
}
