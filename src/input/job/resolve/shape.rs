//! Shapes and edges of slabs, and what is wrong with an outline that does not close.

use crate::geometry::{Compass, Leg, Outline, WalkError};
use crate::input::job::written::{ShapeWritten, SlabWritten};
use crate::input::job::{EdgeKind, EdgePart, Meets};
use crate::input::phrases::{CornerPhrase, Course, LegPhrase, SizePhrase};
use crate::reading::{At, Place, Problem, Problems, Read};
use crate::values::Length;

pub(super) fn shape_place(shape: &ShapeWritten) -> Place {
    match shape {
        ShapeWritten::Size(size) => size.place,
        ShapeWritten::Walked(_, place) | ShapeWritten::Cornered(_, place) => *place,
    }
}

pub(super) fn outline(shape: &ShapeWritten, problems: &mut Problems) -> Read<Outline> {
    let (error, sides, place) = match shape {
        ShapeWritten::Size(size) => match sized(size.value) {
            Ok(outline) => return Ok(outline),
            Err(error) => (error, Vec::new(), size.place),
        },
        ShapeWritten::Walked(legs, place) => match walked(legs) {
            Ok(outline) => return Ok(outline),
            Err(error) => (error, legs.iter().map(|leg| leg.place).collect(), *place),
        },
        ShapeWritten::Cornered(corners, place) => match cornered(corners) {
            Ok(outline) => return Ok(outline),
            Err(error) => (error, corners.iter().map(|at| at.place).collect(), *place),
        },
    };
    Err(problems.push(wrong(&error, &sides, place)))
}

/// Lengths are above zero and sides make their triangle: the phrase has been refused before otherwise.
fn sized(size: SizePhrase) -> Result<Outline, WalkError> {
    Ok(match size {
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => Outline::rectangle(east_west, north_south),
        SizePhrase::Circle { diameter } => Outline::circle(diameter),
        SizePhrase::Shape(shape) => shape.outline()?,
        // A slab and an opening have no depth in their size.
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => return Err(WalkError::NoArea),
    })
}

fn walked(legs: &[At<LegPhrase>]) -> Result<Outline, WalkError> {
    let walked: Vec<Leg> = legs.iter().filter_map(|leg| leg.value.leg()).collect();
    match legs.last() {
        Some(last) if last.value.way == Course::BackToStart => {
            Outline::walked_back(&walked, last.value.along.bulge)
        }
        _ => Outline::walked(&walked),
    }
}

fn cornered(corners: &[At<CornerPhrase>]) -> Result<Outline, WalkError> {
    let corners = corners.iter();
    let corners: Vec<_> = corners
        .map(|corner| (corner.value.at, corner.value.along.bulge))
        .collect();
    Outline::cornered(&corners)
}

/// What is wrong with these sides, at the side that is wrong.
fn wrong(error: &WalkError, sides: &[Place], place: Place) -> Problem {
    let leg_place = |i: usize| sides.get(i).copied().unwrap_or(place);
    match *error {
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
        .at(leg_place(sides.len().saturating_sub(1)))
        .help(
            "check each side against your notes; the last one must come back to the first corner, or be written `back to start`",
        ),
        WalkError::Crosses { first, second } => Problem::new(
            "outline-crosses",
            format!("side {} runs into side {}", second + 1, first + 1),
        )
        .at(leg_place(second))
        .also(leg_place(first), "the other side")
        .help("check the directions and the lengths of these two sides, or the order of the corners"),
        WalkError::BulgeTooDeep { leg } => Problem::new(
            "bulge-too-deep",
            "this bulge is deeper than half a circle",
        )
        .at(leg_place(leg))
        .help("the bulge is how far the curve stands out at its middle, at most half the side"),
        WalkError::NoArea => Problem::new("outline-flat", "this outline encloses nothing")
            .at(place)
            .help("give sides in at least two directions"),
    }
}

fn apart(east: Length, north: Length) -> String {
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

/// What a side itself says it stands against.
pub(super) fn against(shape: &ShapeWritten, leg: usize) -> Option<EdgeKind> {
    match shape {
        ShapeWritten::Size(_) => None,
        ShapeWritten::Walked(legs, _) => legs.get(leg)?.value.along.against,
        ShapeWritten::Cornered(corners, _) => corners.get(leg)?.value.along.against,
    }
}

/// One part a side: what a leg says wins over what `edges` says of its direction.
pub(super) fn edges(
    written: &SlabWritten,
    outline: &Outline,
    problems: &mut Problems,
) -> Vec<EdgePart> {
    let said = written.sides();
    if outline.is_circle().is_some() && !said.is_empty() {
        problems.push(
            Problem::new("edges-of-a-circle", "a circle has no north or east edge")
                .at(written.key.place)
                .help("take `edges` out; a circle is open all round"),
        );
    }
    let named = |facing: Option<Compass>| {
        let said = said.iter().find(|(side, _)| Some(*side) == facing);
        said.map(|(_, kind)| *kind)
    };
    let leg_says = |leg: usize| against(&written.shaped.shape, leg);
    let sides = outline.sides().iter().enumerate();
    sides
        .map(|(i, side)| EdgePart {
            side: i,
            kind: leg_says(side.leg)
                .or_else(|| named(side.facing()))
                .unwrap_or(EdgeKind::Open),
            stretch: None,
            meets: Meets::Nothing,
        })
        .collect()
}
