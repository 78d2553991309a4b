//! Where slabs lie on the site, and which stretches of edge they share.

use super::takeoff::Slab;
use super::written::SlabWritten;
use super::{EdgeKind, EdgePart, Meets};
use crate::geometry::{Compass, Outline, Point, Side};
use crate::input::phrases::BesidePhrase;
use crate::reading::{At, BrokenNames, Problem, Problems, Read};
use crate::values::Length;

/// Room between slabs that nobody placed, so that the plan shows them apart.
const GAP: Length = Length::feet_whole(6);

/// Where two slabs touch; a strip between them is counted once, on the slab that was placed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Contact {
    /// The slab that was placed, and its side.
    placed: (usize, usize),
    /// The slab it was placed against, and its side.
    base: (usize, usize),
    /// Two positions along the edge (x or y).
    stretch: (i64, i64),
}

impl Contact {
    /// The slab that was placed, and its side.
    pub(super) const fn placed(self) -> (usize, usize) {
        self.placed
    }

    /// The slab it was placed against, and its side.
    pub(super) const fn base(self) -> (usize, usize) {
        self.base
    }

    /// Two positions along the edge (x or y).
    pub(super) const fn stretch(self) -> (i64, i64) {
        self.stretch
    }
}

/// Moves every slab to its place; answers where two share an edge, in the order they were placed.
pub(super) fn place(
    slabs: &mut [(Slab, SlabWritten)],
    unsure: &BrokenNames,
    problems: &mut Problems,
) -> Vec<Contact> {
    let mut contacts = Vec::new();
    let mut done: Vec<bool> = slabs
        .iter()
        .map(|(_, written)| reference(written).is_none())
        .collect();
    lay_in_a_row(slabs, &done);
    loop {
        let next =
            (0..slabs.len()).find(|&i| !done[i] && target(slabs, i).is_some_and(|t| done[t]));
        let Some(i) = next else { break };
        let touch = if slabs[i].1.on.is_some() {
            Touch::On
        } else {
            Touch::Beside
        };
        contacts.extend(put(slabs, i, touch, problems).ok().flatten());
        done[i] = true;
    }
    for (i, (_, written)) in slabs.iter().enumerate() {
        let Some(reference) = reference(written).filter(|_| !done[i]) else {
            continue;
        };
        let name = &reference.value.slab;
        if unsure.has(name) {
            continue;
        }
        problems.push(if target(slabs, i).is_some() {
            Problem::new(
                "positions-in-a-circle",
                format!(
                    "`{}` and `{name}` each wait for the other's place",
                    written.key.value
                ),
            )
            .at(reference.place)
            .help("let one of them stand by itself")
        } else {
            Problem::new("unknown-slab", format!("this job has no slab `{name}`"))
                .at(reference.place)
                .help("name a slab of this takeoff")
        });
    }
    contacts
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Touch {
    Beside,
    On,
}

/// What the slab was placed by.
pub(super) fn reference(written: &SlabWritten) -> Option<&At<BesidePhrase>> {
    written.on.as_ref().or(written.beside.as_ref())
}

fn target(slabs: &[(Slab, SlabWritten)], i: usize) -> Option<usize> {
    let name = &reference(&slabs[i].1)?.value.slab;
    slabs.iter().position(|(slab, _)| slab.key == *name)
}

impl Slab {
    /// At another place, before anything of it but outline and levels has one.
    fn put(&mut self, by: Point) {
        self.outline = self.outline.moved(by);
        self.levels = self.levels.take().map(|levels| levels.moved(by));
    }
}

/// Slabs with no place of their own stand in a row, west to east, north edges in line.
fn lay_in_a_row(slabs: &mut [(Slab, SlabWritten)], free: &[bool]) {
    let mut west = 0;
    for (i, (slab, _)) in slabs.iter_mut().enumerate() {
        if free[i] {
            let (low, high) = slab.outline.bounds();
            slab.put(Point {
                x: west - low.x,
                y: -high.y,
            });
            west += high.x - low.x + GAP.as_nanometres();
        }
    }
}

/// Moves a slab to its place; what stands upon another shares no edge with it.
fn put(
    slabs: &mut [(Slab, SlabWritten)],
    i: usize,
    touch: Touch,
    problems: &mut Problems,
) -> Read<Option<Contact>> {
    let (Some(reference), Some(base)) = (reference(&slabs[i].1).cloned(), target(slabs, i)) else {
        return Ok(None);
    };
    let phrase = &reference.value;
    let own = if touch == Touch::On {
        phrase.edge
    } else {
        phrase.edge.opposite()
    };
    let theirs = outermost(&slabs[base].0.outline, phrase.edge);
    let mine = outermost(&slabs[i].0.outline, own);
    let (Some((their_number, their_side)), Some((my_number, my_side))) = (theirs, mine) else {
        let message = format!("there is no straight {} edge to touch", phrase.edge.name());
        return Err(problems.push(
            Problem::new("bad-position", message)
                .at(reference.place)
                .help("name an edge that is straight, or leave the position out"),
        ));
    };
    let by = shift(&their_side, &my_side, phrase);
    slabs[i].0.put(by);
    let my_side = slabs[i].0.outline.sides()[my_number];
    let shared = overlap(&their_side, &my_side, phrase.edge);
    let Some(stretch) = shared else {
        let (key, slab) = (&slabs[i].0.key, &phrase.slab);
        let message = format!("`{key}` would not touch `{slab}` there");
        return Err(problems.push(
            Problem::new("bad-position", message)
                .at(reference.place)
                .help("check the distance from the end of the edge"),
        ));
    };
    Ok((touch == Touch::Beside).then_some(Contact {
        placed: (i, my_number),
        base: (base, their_number),
        stretch,
    }))
}

/// The straight side that looks that way and lies farthest out; the longest of several.
pub(super) fn outermost(outline: &Outline, edge: Compass) -> Option<(usize, Side)> {
    let out = |side: &Side| match edge {
        Compass::North => side.from.y,
        Compass::South => -side.from.y,
        Compass::East => side.from.x,
        Compass::West => -side.from.x,
    };
    let sides = outline.sides().iter().copied().enumerate();
    sides
        .filter(|(_, side)| side.facing() == Some(edge) && side.is_straight())
        .max_by_key(|(_, side)| (out(side), side.from.distance_squared(side.to)))
}

/// How far the slab moves so that its side lies on theirs, its end where it was said.
fn shift(theirs: &Side, mine: &Side, phrase: &BesidePhrase) -> Point {
    let offset = phrase.offset.as_nanometres();
    let (along_x, along_y) = match phrase.from {
        Compass::North => (
            None,
            Some(theirs.from.y.max(theirs.to.y) - offset - mine.from.y.max(mine.to.y)),
        ),
        Compass::South => (
            None,
            Some(theirs.from.y.min(theirs.to.y) + offset - mine.from.y.min(mine.to.y)),
        ),
        Compass::West => (
            Some(theirs.from.x.min(theirs.to.x) + offset - mine.from.x.min(mine.to.x)),
            None,
        ),
        Compass::East => (
            Some(theirs.from.x.max(theirs.to.x) - offset - mine.from.x.max(mine.to.x)),
            None,
        ),
    };
    Point {
        x: along_x.unwrap_or(theirs.from.x - mine.from.x),
        y: along_y.unwrap_or(theirs.from.y - mine.from.y),
    }
}

/// The stretch both sides share, as two positions along the edge (x or y).
fn overlap(theirs: &Side, mine: &Side, edge: Compass) -> Option<(i64, i64)> {
    let along = |point: Point| {
        if matches!(edge, Compass::North | Compass::South) {
            point.x
        } else {
            point.y
        }
    };
    let low = along(theirs.from)
        .min(along(theirs.to))
        .max(along(mine.from).min(along(mine.to)));
    let high = along(theirs.from)
        .max(along(theirs.to))
        .min(along(mine.from).max(along(mine.to)));
    (low < high).then_some((low, high))
}

/// The parts of a slab's edge, with this stretch of one side made another.
pub(super) fn divided(
    parts: &[EdgePart],
    number: usize,
    side: &Side,
    &(low, high): &(i64, i64),
    (kind, meets): (EdgeKind, Meets),
) -> Vec<EdgePart> {
    let along = |point: Point| {
        if side.from.y == side.to.y {
            point.x
        } else {
            point.y
        }
    };
    let forward = along(side.from) < along(side.to);
    // Positions along the side, from its first corner.
    let at = |position: i64| {
        Length::nanometres(if forward {
            position - along(side.from)
        } else {
            along(side.from) - position
        })
    };
    let whole = Length::nanometres((along(side.to) - along(side.from)).abs());
    let (start, end) = if forward {
        (at(low), at(high))
    } else {
        (at(high), at(low))
    };
    let mut result = Vec::new();
    for part in parts {
        let (from, to) = part.stretch.unwrap_or((Length::ZERO, whole));
        if part.side != number || end <= from || to <= start {
            result.push(*part);
            continue;
        }
        if from < start {
            result.push(EdgePart {
                stretch: Some((from, start)),
                ..*part
            });
        }
        result.push(EdgePart {
            side: number,
            kind,
            stretch: Some((start.max(from), end.min(to))),
            meets,
        });
        if end < to {
            result.push(EdgePart {
                stretch: Some((end, to)),
                ..*part
            });
        }
    }
    result
}
