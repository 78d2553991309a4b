//! The outline of a slab from its size or its walk with the tape.

use super::{EdgeKind, EdgePart, ShapeWritten, SlabWritten};
use crate::geometry::{Leg, Outline, WalkError};
use crate::input::phrases::SizePhrase;
use crate::reading::{Place, Problem, Problems};
use crate::values::Length;

pub(super) fn shape_place(shape: &ShapeWritten) -> Place {
    match shape {
        ShapeWritten::Size(size) => size.place,
        ShapeWritten::Walked(_, place) => *place,
    }
}

pub(super) fn outline(shape: &ShapeWritten, problems: &mut Problems) -> Option<Outline> {
    let (legs, place) = match shape {
        ShapeWritten::Size(size) => match size.value {
            SizePhrase::Rectangle {
                east_west,
                north_south,
            } => return Some(Outline::rectangle(east_west, north_south)),
            SizePhrase::Circle { diameter } => return Some(Outline::circle(diameter)),
            SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => return None,
        },
        ShapeWritten::Walked(legs, place) => (legs, *place),
    };
    let walked: Vec<Leg> = legs.iter().map(|leg| leg.value.leg).collect();
    let error = match Outline::walked(&walked) {
        Ok(outline) => return Some(outline),
        Err(error) => error,
    };
    let leg_place = |i: usize| legs.get(i).map_or(place, |leg| leg.place);
    problems.push(match error {
        WalkError::TooFew => {
            Problem::new("outline-too-short", "an outline needs at least three sides")
                .at(place)
                .help("walk all the way round, back to the first corner")
        }
        WalkError::NotClosed { east, north } => Problem::new(
            "outline-not-closed",
            format!(
                "the outline ends {} from where it began",
                apart(east, north)
            ),
        )
        .at(leg_place(legs.len().saturating_sub(1)))
        .help(
            "check each side against your notes; the last one must come back to the first corner",
        ),
        WalkError::Crosses { first, second } => Problem::new(
            "outline-crosses",
            format!("side {} runs into side {}", second + 1, first + 1),
        )
        .at(leg_place(second))
        .also(leg_place(first), "the other side")
        .help("check the directions and the lengths of these two sides"),
        WalkError::BulgeTooDeep { leg } => Problem::new(
            "bulge-too-deep",
            "this bulge is deeper than half a circle",
        )
        .at(leg_place(leg))
        .help("the bulge is how far the curve stands out at its middle, at most half the side"),
        WalkError::NoArea => Problem::new("outline-flat", "this outline encloses nothing")
            .at(place)
            .help("give sides in at least two directions"),
    });
    None
}

pub(super) fn apart(east: Length, north: Length) -> String {
    let one = |length: Length, plus: &str, minus: &str| {
        (length != Length::ZERO).then(|| {
            format!(
                "{} {}",
                length.abs(),
                if Length::ZERO < length { plus } else { minus }
            )
        })
    };
    let parts: Vec<String> = [one(east, "east", "west"), one(north, "north", "south")]
        .into_iter()
        .flatten()
        .collect();
    parts.join(" and ")
}

/// One part a side: what a leg says wins over what `edges` says of its direction.
pub(super) fn edges(
    written: &SlabWritten,
    outline: &Outline,
    problems: &mut Problems,
) -> Vec<EdgePart> {
    use crate::geometry::Facing;
    use crate::input::phrases::Compass;
    if outline.is_circle().is_some() && !written.edges.is_empty() {
        problems.push(
            Problem::new("edges-of-a-circle", "a circle has no north or east edge")
                .at(written.key.place)
                .help("take `edges` out; a circle is open all round"),
        );
    }
    let named = |facing: Facing| {
        let side = match facing {
            Facing::North => Compass::North,
            Facing::East => Compass::East,
            Facing::South => Compass::South,
            Facing::West => Compass::West,
            Facing::Slanted => return None,
        };
        written
            .edges
            .iter()
            .find(|(compass, _)| *compass == side)
            .map(|(_, kind)| *kind)
    };
    let leg_says = |leg: usize| {
        if let ShapeWritten::Walked(legs, _) = &written.shape {
            legs.get(leg).and_then(|leg| leg.value.against)
        } else {
            None
        }
    };
    let sides = outline.sides().iter().enumerate();
    sides
        .map(|(i, side)| EdgePart {
            side: i,
            kind: leg_says(side.leg)
                .or_else(|| named(side.facing()))
                .unwrap_or(EdgeKind::Open),
            stretch: None,
        })
        .collect()
}
