//! Bars across the corners that turn into a slab: at its edge, at openings, at boxes.

use super::bars::{self, BarQuantities};
use super::{Measuring, OpeningQuantities};
use crate::geometry::rim;
use crate::input::job::{EdgeKind, SetBox, Slab};
use crate::input::phrases::OpeningPhrase;
use crate::reading::At;
use crate::trade::tally::Tally;
use crate::trade::term::of;
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// What is smaller than the smallest opening has none; nor has a corner that a slab of the same pour fills.
pub(super) fn bars(
    slab: &Slab,
    with: Measuring<'_>,
    openings: &[OpeningQuantities],
    tally: &mut Tally<'_>,
) -> Option<BarQuantities> {
    let wanted = slab.corner_bars.as_ref()?;
    let inside = at_edge(slab);
    let holes = slab.outline.holes().iter().zip(openings);
    let holes = holes.filter(|(_, found)| found.is_taken_off);
    let opened: usize = holes
        .map(|(hole, _)| rim::inside_corners(hole, true).len())
        .sum();
    let least = with.policy.smallest_opening.value.value;
    let is_square = |set: &&SetBox| {
        let stock = with.rules.boxes.get(&set.stock.value);
        stock.is_some_and(|stock| match stock.opening.value {
            OpeningPhrase::Rectangle(wide, deep) => least <= (wide * deep).square_feet(),
            OpeningPhrase::Round(_) => false,
        })
    };
    let boxed = 4 * slab.boxes.iter().filter(is_square).count();
    let parts = [
        (inside, "of the edge"),
        (opened, "of openings"),
        (boxed, "of boxes"),
    ];
    let parts = parts.into_iter().filter(|(many, _)| *many != 0);
    let how: Vec<String> = parts
        .map(|(many, whose)| format!("{many} {whose}"))
        .collect();
    let all = u32::try_from(inside + opened + boxed).expect("corners of one slab");
    let working = Working::Shape {
        how: format!("turned by more than 30 degrees: {}", how.join(", ")),
        place: slab.outline_place,
    };
    let found = bars::along(slab, &wanted.bars, &[(wanted.length, all)], with)?;
    let corners = Quantity::new(
        tally.name("inside corners"),
        Amount::new(all.into(), Unit::Plain),
        working,
    );
    let each = Quantity::given(
        "bars across each",
        Amount::new(wanted.bars.value.count.into(), Unit::Plain),
        wanted.bars.place,
    );
    let length = At::new(wanted.length, wanted.bars.place);
    let feet = of(&corners) * &each * &Quantity::feet("length of each", &length);
    tally.show([&corners]);
    let rule = "corners × bars × length of each; common practice, no source";
    Some(found.placed(rule, "corner", feet, tally))
}

/// Corners of its own outline.
fn at_edge(slab: &Slab) -> usize {
    let joined = |side: usize, is_end: bool| {
        let parts = slab.edges.iter().filter(|part| part.side == side);
        let part = if is_end {
            parts.max_by_key(|part| part.stretch)
        } else {
            parts.min_by_key(|part| part.stretch)
        };
        part.is_some_and(|part| part.kind == EdgeKind::Joined)
    };
    let sides = slab.outline.sides().len();
    let corners = rim::inside_corners(&slab.outline, false).into_iter();
    corners
        .filter(|&side| !(joined(side, true) && joined((side + 1) % sides, false)))
        .count()
}
