//! A flight of steps laid on the edge it leads down from.

use crate::geometry::{Compass, Point};
use crate::input::job::sections::Steps;
use crate::input::job::takeoff::Slab;
use crate::input::job::{EdgeKind, Meets, positions};
use crate::input::sections::StepsWritten;
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Length;

/// The flight at its place; the edge there is joined to it.
pub(super) fn flight(
    slab: &mut Slab,
    written: &StepsWritten,
    problems: &mut Problems,
) -> Read<Steps> {
    let edge = written.edge.value;
    let Some((number, side)) = positions::outermost(&slab.outline, edge) else {
        let message = format!("`{}` has no straight {} side", slab.key, edge.name());
        return Err(problems.push(
            Problem::new("no-such-edge", message)
                .at(written.edge.place)
                .help("let the steps lead down from a straight side"),
        ));
    };
    let along = |point: Point| match edge {
        Compass::North | Compass::South => point.x,
        Compass::East | Compass::West => point.y,
    };
    let (low, high) = (
        along(side.from).min(along(side.to)),
        along(side.from).max(along(side.to)),
    );
    let width = written.width.clone().unwrap_or(At {
        value: Length::nanometres(high - low),
        place: written.place,
    });
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
    let forward = along(side.from) < along(side.to);
    let (first, last) = if forward {
        (stretch.0, stretch.1)
    } else {
        (stretch.1, stretch.0)
    };
    let from_corner = |position: i64| Length::nanometres((position - along(side.from)).abs());
    let met = met(slab, number, (from_corner(first), from_corner(last)));
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
        top: (on(first), on(last)),
        total: written.total.clone(),
    })
}

/// What stands at this stretch of a side, if it is not open all along.
fn met(slab: &Slab, side: usize, (from, to): (Length, Length)) -> Option<EdgeKind> {
    let parts = slab.edges.iter().filter(|part| part.side == side);
    let mut met = parts.filter(|part| {
        let overlaps = |(start, end): (Length, Length)| start < to && from < end;
        part.kind != EdgeKind::Open && part.stretch.is_none_or(overlaps)
    });
    met.next().map(|part| part.kind)
}
