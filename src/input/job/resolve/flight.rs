//! A flight of steps laid on the edge it leads down from.

use super::shape::{ambiguous, any_of};
use crate::geometry::{Compass, Point, Side};
use crate::input::job::Base;
use crate::input::job::sections::Steps;
use crate::input::job::sides::{NamedSide, Sides};
use crate::input::job::takeoff::Slab;
use crate::input::job::{EdgeKind, Meets, positions};
use crate::input::phrases::{BasePhrase, EdgeName};
use crate::input::sections::StepsWritten;
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Length;

/// The flight at its place; the edge there is joined to it.
pub(super) fn flight(
    slab: &mut Slab,
    written: &StepsWritten,
    problems: &mut Problems,
) -> Read<Steps> {
    let (number, edge) = edge_of(slab, written, problems)?;
    let side = slab.outline.sides()[number];
    if let Some(from) = &written.from {
        let end = from.value.of(edge, "bad-steps");
        end.map_err(|unreadable| problems.unreadable(unreadable, from.place))?;
    }
    let Laid {
        low,
        high,
        start,
        width,
    } = Laid::on(&side, written);
    let wide = width.value.as_nanometres();
    if start < low || high < start + wide {
        let message = format!(
            "steps `{}` wide do not fit there on the {} edge of `{}`, which is `{}` long",
            width.value,
            edge.name(),
            slab.key,
            Length::nanometres(high - low)
        );
        return Err(problems.push(
            Problem::new("steps-too-wide", message)
                .at(width.place)
                .help("make them narrower, or check the distance from the end"),
        ));
    }
    let stretch = (start, start + wide);
    let met = met(slab, number, stretch);
    if let Some(kind) = met {
        let message = format!(
            "steps lead down where the {} edge of `{}` is `{}`, not open",
            edge.name(),
            slab.key,
            kind.name()
        );
        return Err(problems.push(
            Problem::new("steps-not-open", message)
                .at(written.place)
                .help("move them along the edge; a slab at their foot begins a flight farther out, so leave its position out"),
        ));
    }
    let forward = along(&side, side.from) < along(&side, side.to);
    let (first, last) = if forward {
        stretch
    } else {
        (stretch.1, stretch.0)
    };
    let joined = (EdgeKind::Joined, Meets::Nothing);
    slab.edges = positions::divided(&slab.edges, number, &side, &stretch, joined);
    let on = |position: i64| match edge {
        Compass::North | Compass::South => Point::new(position, side.from.y),
        Compass::East | Compass::West => Point::new(side.from.x, position),
    };
    Ok(Steps {
        risers: written.risers.clone().map(|risers| risers.0),
        rise: written.rise.clone(),
        tread: written.tread.clone(),
        width,
        edge,
        base: written.base.as_ref().and_then(|at| match &at.value {
            BasePhrase::None => None,
            BasePhrase::Of { depth, material } => Some(Base {
                depth: At::new(*depth, at.place),
                material: At::new(material.clone(), at.place),
            }),
        }),
        bars: written.bars.clone(),
        bottom: written.bottom.clone(),
        top: (on(first), on(last)),
        total: written.total.clone(),
    })
}

/// The side that the steps lead down from: of several with that name the only one that has room.
fn edge_of(slab: &Slab, written: &StepsWritten, problems: &mut Problems) -> Read<(usize, Compass)> {
    let name = written.edge.value;
    let size = slab.size.as_ref().map(|size| size.value);
    let sides = Sides::of(size, &slab.outline);
    let straight = |side: &&NamedSide| {
        let number = *side
            .sides
            .first()
            .filter(|_| side.is_straight && !side.of_middle)?;
        let looks = slab.outline.sides()[number].facing()?;
        Some((number, looks))
    };
    let bearing = sides.bearing(name);
    let all: Vec<(usize, Compass)> = bearing.iter().filter_map(straight).collect();
    let has_room = |&(number, _): &(usize, Compass)| has_room(slab, written, number);
    let fitting: Vec<(usize, Compass)> = all.iter().copied().filter(has_room).collect();
    match (&all[..], &fitting[..]) {
        ([only], _) | (_, [only]) => Ok(*only),
        ([], _) => {
            let message = match name {
                EdgeName::Looking(way) => format!("`{}` has no straight {way} side", slab.key),
                EdgeName::Number(_) | EdgeName::Long(_) | EdgeName::Called(_) => {
                    format!(
                        "`{}` has no straight side `{name}` to lead down from",
                        slab.key
                    )
                }
            };
            let square = sides.all().iter().filter(|side| straight(side).is_some());
            let names = sides.names(square);
            let help = if names.is_empty() {
                "let the steps lead down from a straight side".to_owned()
            } else {
                format!("write {}", any_of(&names))
            };
            let problem = Problem::new("no-such-edge", message);
            Err(problems.push(problem.at(written.edge.place).help(help)))
        }
        _ => {
            let straight = bearing.into_iter().filter(|side| straight(side).is_some());
            let name = At::new(name.to_string(), written.edge.place);
            Err(problems.push(ambiguous(&slab.key, &name, &sides.names(straight))))
        }
    }
}

/// A flight on a side from one place along it to another.
struct Laid {
    low: i64,
    high: i64,
    start: i64,
    width: At<Length>,
}

impl Laid {
    fn on(side: &Side, written: &StepsWritten) -> Self {
        let (from, to) = (along(side, side.from), along(side, side.to));
        let (low, high) = (from.min(to), from.max(to));
        let whole = At::new(Length::nanometres(high - low), written.place);
        let width = written.width.clone().unwrap_or(whole);
        let wide = width.value.as_nanometres();
        let start = match &written.from {
            None => low + (high - low - wide) / 2,
            Some(from) => {
                let offset = from.value.offset.as_nanometres();
                match from.value.end {
                    Compass::West | Compass::South => low + offset,
                    Compass::East | Compass::North => high - offset - wide,
                }
            }
        };
        Self {
            low,
            high,
            start,
            width,
        }
    }
}

/// East or north, whichever way a side along an axis goes.
fn along(side: &Side, point: Point) -> i64 {
    if side.from.y == side.to.y {
        point.x
    } else {
        point.y
    }
}

/// Whether a flight fits there on this side, and all of the side it meets is open.
fn has_room(slab: &Slab, written: &StepsWritten, number: usize) -> bool {
    let laid = Laid::on(&slab.outline.sides()[number], written);
    let end = laid.start + laid.width.value.as_nanometres();
    laid.low <= laid.start && end <= laid.high && met(slab, number, (laid.start, end)).is_none()
}

/// What stands between two places along a side, if it is not open all along.
fn met(slab: &Slab, number: usize, (low, high): (i64, i64)) -> Option<EdgeKind> {
    let side = slab.outline.sides()[number];
    let (first, last) = (along(&side, side.from), along(&side, side.to));
    let from_corner = |position: i64| Length::nanometres((position - first).abs());
    let (from, to) = if first < last {
        (low, high)
    } else {
        (high, low)
    };
    let (from, to) = (from_corner(from), from_corner(to));
    let parts = slab.edges.iter().filter(|part| part.side == number);
    let mut met = parts.filter(|part| {
        let overlaps = |(start, end): (Length, Length)| start < to && from < end;
        part.kind != EdgeKind::Open && part.stretch.is_none_or(overlaps)
    });
    met.next().map(|part| part.kind)
}
