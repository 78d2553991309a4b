//! Openings put into their slab: inside it, apart from its edge and from each other.

use super::shape::{against, outline as outline_of, shape_place};
use crate::geometry::{Compass, HoleError, Outline, Point};
use crate::input::job::takeoff::Opening;
use crate::input::job::written::{OpeningWritten, ShapeWritten, SlabWritten};
use crate::input::job::{EdgeKind, EdgePart, Meets};
use crate::input::phrases::{ShapePhrase, SizePhrase, SpotPhrase};
use crate::reading::{At, Problem, Problems, Read};

/// The slab's outline with its holes, and what is known of each.
pub(super) fn openings(
    slab: &SlabWritten,
    outline: Outline,
    problems: &mut Problems,
) -> Read<(Outline, Vec<Opening>)> {
    let before = problems.len();
    let mut outline = outline;
    let mut done: Vec<Opening> = ring(slab, &outline).into_iter().collect();
    for opening in &slab.openings {
        if let Some(first) = done.iter().find(|one| one.name.value == opening.name.value) {
            let message = format!("two openings are named `{}`", opening.name.value);
            problems.push(
                Problem::new("openings-of-one-name", message)
                    .at(opening.name.place)
                    .also(first.name.place, "the other one")
                    .help("give each its own name, for example `post 1` and `post 2`"),
            );
            continue;
        }
        let Ok(hole) = outline_of(&opening.shaped.shape, problems) else {
            continue;
        };
        if !hole.holes().is_empty() {
            problems.push(
                Problem::new("bad-size", "an opening is open all through, and this is a ring")
                    .at(shape_place(&opening.shaped.shape))
                    .help("for what is open write the circle, for example `circle 8 ft`; for a slab in it write a slab"),
            );
            continue;
        }
        let hole = put(&hole, &outline, &opening.at.value);
        match outline.clone().with_hole(hole.clone()) {
            Ok(with) => {
                outline = with;
                done.push(resolved(opening, &hole));
            }
            Err(error) => {
                problems.push(wrong(error, opening, slab, &done));
            }
        }
    }
    problems.none_since(before)?;
    Ok((outline, done))
}

/// The middle of a slab that is a ring.
fn ring(slab: &SlabWritten, outline: &Outline) -> Option<Opening> {
    let ShapeWritten::Size(size) = &slab.shaped.shape else {
        return None;
    };
    let SizePhrase::Shape(ShapePhrase::Ring { inside, .. }) = size.value else {
        return None;
    };
    let hole = outline.holes().first()?;
    let sides = (0..hole.sides().len()).map(|side| EdgePart {
        side,
        kind: EdgeKind::Open,
        stretch: None,
        meets: Meets::Nothing,
    });
    Some(Opening {
        name: At {
            value: "middle".to_owned(),
            place: size.place,
        },
        size: Some(At {
            value: SizePhrase::Circle { diameter: inside },
            place: size.place,
        }),
        edges: sides.collect(),
        of_ring: true,
    })
}

fn resolved(opening: &OpeningWritten, hole: &Outline) -> Opening {
    let sides = hole.sides().iter().enumerate();
    Opening {
        name: opening.name.clone(),
        size: match &opening.shaped.shape {
            ShapeWritten::Size(size) => Some(size.clone()),
            ShapeWritten::Walked(..) | ShapeWritten::Cornered(..) | ShapeWritten::Path(..) => None,
        },
        edges: sides
            .map(|(number, side)| EdgePart {
                side: number,
                kind: against(&opening.shaped.shape, side.leg).unwrap_or(opening.kind()),
                stretch: None,
                meets: Meets::Nothing,
            })
            .collect(),
        of_ring: false,
    }
}

/// Moved so that its nearest sides are as far from two sides of the slab's box as was said.
fn put(hole: &Outline, slab: &Outline, spot: &SpotPhrase) -> Outline {
    let ((low, high), (own_low, own_high)) = (slab.bounds(), hole.bounds());
    let (far, side) = spot.east_west;
    let x = match side {
        Compass::East => high.x - far.as_nanometres() - own_high.x,
        Compass::North | Compass::South | Compass::West => low.x + far.as_nanometres() - own_low.x,
    };
    let (far, side) = spot.north_south;
    let y = match side {
        Compass::North => high.y - far.as_nanometres() - own_high.y,
        Compass::South | Compass::East | Compass::West => low.y + far.as_nanometres() - own_low.y,
    };
    hole.moved(Point::new(x, y))
}

fn wrong(
    error: HoleError,
    opening: &OpeningWritten,
    slab: &SlabWritten,
    done: &[Opening],
) -> Problem {
    let (name, slab) = (&opening.name.value, &slab.key.value);
    match error {
        HoleError::Outside => Problem::new(
            "opening-outside",
            format!("`{name}` would lie outside `{slab}`"),
        )
        .at(opening.at.place)
        .help("count from the outermost points of the slab to the nearest sides of the opening"),
        HoleError::MeetsOutline => Problem::new(
            "opening-at-edge",
            format!("`{name}` would reach the edge of `{slab}`"),
        )
        .at(opening.at.place)
        .help(
            "an opening has concrete all round; what is cut from an edge belongs to the `outline`",
        ),
        HoleError::MeetsHole(i) => {
            let message = format!("`{name}` would meet `{}`", done[i].name.value);
            Problem::new("openings-meet", message)
                .at(opening.at.place)
                .also(done[i].name.place, "the other opening")
                .help("check both places, or make one opening of the two")
        }
    }
}
