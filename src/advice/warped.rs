//! Do the levels of a slab lie in one plane, and does each run away from the house?

use super::{Case, DECIDES};
use crate::input::job::{EdgeKind, Levels, Slab};
use crate::reading::{Place, Problem};
use crate::tables::{Source, slopes};
use crate::values::Length;

/// A slab may be warped by this and no one sees it. Common practice, no source.
const UNSEEN: Length = Length::sixty_fourths(16);

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let shot = case.takeoff.slabs.iter().filter_map(|slab| {
        let place = slab
            .falls
            .first()
            .map_or(slab.place, |fall| fall.rise.place);
        Some((slab.as_ref(), slab.levels.as_ref()?, place))
    });
    let answers = shot.flat_map(|(slab, levels, place)| {
        [warped(slab, levels, place), to_house(slab, levels, place)]
    });
    answers.flatten().collect()
}

fn warped(slab: &Slab, levels: &Levels, place: Place) -> Option<Problem> {
    let (name, off) = levels.farthest_off()?;
    let way = if off < Length::ZERO { "below" } else { "above" };
    let message = format!(
        "the levels of `{}` lie in no one plane: `{name}` is {} {way} it",
        slab.key,
        off.abs()
    );
    (UNSEEN < off.abs()).then(|| {
        Problem::new("warped", message).at(place).help(format!(
            "a slab may be warped, and its forms set so; if it should not be, shoot the corner again ({})",
            Source::PRACTICE
        ))
    })
}

/// Along both sides that end at a wall the far corner has to be the lower one; `from_house` tells of
/// a slab whose plane falls to it.
fn to_house(slab: &Slab, levels: &Levels, place: Place) -> Option<Problem> {
    let sides = slab.outline.sides();
    let falls_to = |wall: usize| {
        let facing = sides[wall].facing();
        let mut falls = slab.falls.iter();
        falls.any(|fall| facing.is_some() && fall.to.side() == facing)
    };
    let walls = slab.edges.iter();
    let walls = walls.filter(|part| part.kind == EdgeKind::House && !falls_to(part.side));
    let ends = walls.flat_map(|part| {
        let many = sides.len();
        let (wall, before) = (&sides[part.side], &sides[(part.side + many - 1) % many]);
        let after = &sides[(part.side + 1) % many];
        [(wall.from, before.from), (wall.to, after.to)]
    });
    let mut higher = ends.filter_map(|(near, far)| {
        let rises = levels.at(far)? - levels.at(near)?;
        (Length::ZERO < rises).then_some(rises)
    });
    let rises = higher.next()?;
    let message = format!(
        "`{}` falls {rises} to a house along one of its sides",
        slab.key
    );
    Some(
        Problem::new("falls-to-house", message)
            .at(place)
            .help(format!(
                "2% or more away from the house, which 1/4 in per ft is; source: {}; {DECIDES}",
                slopes::AWAY
            )),
    )
}
