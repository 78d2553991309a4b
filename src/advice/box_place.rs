//! Does a box leave enough concrete around it?

use super::{Case, DECIDES};
use crate::geometry::Point;
use crate::input::book::BoxStock;
use crate::input::job::{SetBox, Slab, has_word};
use crate::reading::{At, Problem};
use crate::tables::Source;
use crate::values::Length;

/// A narrower strip of concrete breaks off.
const EDGE: Length = Length::inches_whole(6);
/// Names of what is not meant to go through; common practice, no source.
const BLIND: [&str; 4] = ["pocket", "post", "sleeve", "anchor"];

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let mut answers = Vec::new();
    for (slab, _) in case.slabs() {
        for set in &slab.boxes {
            let Some(stock) = case.book.rules.boxes.get(&set.stock.value) else {
                continue;
            };
            answers.extend(shallow(slab, set, stock));
            if let Some(middle) = &set.middle {
                answers.extend(near_edge(slab, set, stock, middle));
            }
        }
    }
    answers
}

fn shallow(slab: &Slab, set: &SetBox, stock: &BoxStock) -> Option<Problem> {
    let depth = stock.depth.as_ref()?;
    // A pocket for a post ends in the concrete, and a stoop is deeper than any box.
    let names = [&set.name.value, &set.stock.value];
    if slab.sections.is_stoop() || names.iter().any(|name| has_word(name, &BLIND)) {
        return None;
    }
    (depth.value < slab.thickness.value.thin).then(|| {
        let message = format!(
            "`{}` is `{}` deep, and `{}` is `{}` thick",
            set.name.value, depth.value, slab.key, slab.thickness.value.thin
        );
        Problem::new("box-shallow", message)
            .at(set.name.place)
            .also(depth.place, "its depth")
            .help(format!(
                "concrete would run under it; take a deeper box or set it on a ring ({}); {DECIDES}",
                Source::PRACTICE
            ))
    })
}

fn near_edge(slab: &Slab, set: &SetBox, stock: &BoxStock, middle: &At<Point>) -> Option<Problem> {
    let with_margin = stock.opening.value.around(middle.value, EDGE);
    (!slab.outline.holds(&with_margin)).then(|| {
        let message = format!(
            "less than `{EDGE}` of concrete lie between `{}` and an edge of `{}`",
            set.name.value, slab.key
        );
        Problem::new("box-near-edge", message)
            .at(middle.place)
            .help(format!(
                "move it in, or thicken or reinforce that strip ({}); {DECIDES}",
                Source::PRACTICE
            ))
    })
}
