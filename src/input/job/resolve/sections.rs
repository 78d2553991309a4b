//! Cross sections and steps of a slab, once its outline is known and, later, its place.

use super::names::known;
use super::shape::any_of;
use crate::geometry::{Outline, rim};
use crate::input::book::Rules;
use crate::input::job::sanity;
use crate::input::job::sections::Sections;
use crate::input::job::sides::Sides;
use crate::input::job::takeoff::Slab;
use crate::input::job::written::SlabWritten;
use crate::input::phrases::{BasePhrase, EdgeName, EdgesPhrase, StoopPhrase, Thickness};
use crate::input::sections::{EdgeSort, Thickened};
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Length;

/// Deeper than this is a foundation wall.
const DEEPEST: Length = Length::inches_whole(48);

/// The thickness of the slab, as said or of a solid stoop, and what it is beyond that.
pub(super) fn sections(
    written: &SlabWritten,
    mut thickness: At<Thickness>,
    thickened: Option<At<Option<Thickened>>>,
    retarder: Option<At<bool>>,
    outline: &Outline,
    rules: &Rules,
    problems: &mut Problems,
) -> (At<Thickness>, Sections) {
    let key = &written.key.value;
    let (thin, thick) = (thickness.value.thin, thickness.value.thick);
    for value in [thin].into_iter().chain(thick.map(|(end, _)| end)) {
        let place = thickness.place;
        sanity::thickness(key, &At { value, place }, problems);
    }
    let mut thickened = thickened.and_then(|at| at.value);
    if let Some(edge) = &thickened {
        named_sides(written, edge, outline, problems);
    }
    let along = thickened.as_ref().and_then(|edge| edge.bars.as_ref());
    let along_steps = written.steps.as_ref().and_then(|steps| steps.bars.as_ref());
    for bars in along.into_iter().chain(along_steps) {
        let bar = At::new(bars.value.bar.to_string(), bars.place);
        let _ = known(&bar, &rules.bars, "bar", problems);
    }
    let base = written.steps.as_ref().and_then(|steps| steps.base.as_ref());
    if let Some((base, BasePhrase::Of { material, .. })) = base.map(|at| (at, &at.value)) {
        let material = At::new(material.clone(), base.place);
        let _ = known(&material, &rules.bases, "base", problems);
    }
    if let Some(stoop) = &written.stoop {
        known_fill(stoop, rules, problems);
        let walls = stoop_walls(written, stoop, &mut thickness, problems);
        match (&thickened, walls) {
            (Some(edge), Ok(Some(_))) => {
                problems.push(
                    Problem::new(
                        "stoop-and-thickened",
                        format!("`{key}` has both walls of a stoop and thickened edges"),
                    )
                    .at(stoop.place)
                    .also(edge.width.place, "the thickened edges")
                    .help("keep one of the two; `thickened: none` undoes what the kind says"),
                );
            }
            (None, Ok(Some(walls))) => thickened = Some(walls),
            (_, Ok(None) | Err(_)) => {}
        }
    }
    let sections = Sections {
        thickened,
        retarder: retarder.filter(|at| at.value).map(|at| at.map(drop)),
        steps: None,
        stoop: written.stoop.clone(),
    };
    (thickness, sections)
}

fn known_fill(stoop: &At<StoopPhrase>, rules: &Rules, problems: &mut Problems) {
    if let StoopPhrase::Filled {
        with: Some(with), ..
    } = &stoop.value
    {
        let material = At {
            value: with.clone(),
            place: stoop.place,
        };
        let _ = known(&material, &rules.bases, "base", problems);
    }
}

/// A solid stoop is as thick as its steps are high; walls around fill are a thickened edge as deep.
fn stoop_walls(
    written: &SlabWritten,
    stoop: &At<StoopPhrase>,
    thickness: &mut At<Thickness>,
    problems: &mut Problems,
) -> Read<Option<Thickened>> {
    let walls = match &stoop.value {
        StoopPhrase::None => return Ok(None),
        StoopPhrase::Solid => None,
        StoopPhrase::Filled { walls, .. } => Some(*walls),
    };
    let Some(steps) = &written.steps else {
        let message = format!("nothing says how high the stoop `{}` is", written.key.value);
        return Err(problems.push(
            Problem::new("stoop-without-steps", message).at(stoop.place).help(
                "add its steps, for example `steps: 2 risers of 7 in, 12 in treads, south edge`",
            ),
        ));
    };
    let height = At {
        value: steps.rise.value * i64::from(steps.risers.value.0),
        place: steps.rise.place,
    };
    let Some(walls) = walls else {
        *thickness = height.map(Thickness::even);
        return Ok(None);
    };
    Ok(Some(Thickened {
        sort: EdgeSort::Thickened,
        edges: At {
            value: EdgesPhrase::All,
            place: stoop.place,
        },
        width: At {
            value: walls,
            place: stoop.place,
        },
        depth: height,
        taper: None,
        bars: None,
    }))
}

fn named_sides(
    written: &SlabWritten,
    edge: &Thickened,
    outline: &Outline,
    problems: &mut Problems,
) {
    let EdgesPhrase::Named(names) = &edge.edges.value else {
        return;
    };
    let key = &written.key.value;
    let sides = Sides::of(written.shaped.shape.size(), outline);
    let missing = names.iter().filter(|name| sides.thick(**name).is_empty());
    for name in missing {
        let what = match name {
            EdgeName::Looking(way) => format!("no straight {way} side"),
            EdgeName::Number(number) => format!("no side {number}"),
            EdgeName::Long(_) | EdgeName::Called(_) => format!("no side `{name}`"),
        };
        let outer = sides.all().iter().filter(|side| !side.of_middle);
        let names = sides.names(outer);
        problems.push(
            Problem::new("no-such-edge", format!("`{key}` has {what}"))
                .at(edge.edges.place)
                .help(format!("write {}, or `all` or `all open`", any_of(&names))),
        );
    }
}

/// What can be said only when every slab has its place: flights on their edges, room for thick edges.
pub(super) fn placed(slab: &mut Slab, written: &SlabWritten, problems: &mut Problems) {
    if let Some(steps) = &written.steps {
        // What else is wrong with the slab is said too.
        slab.sections.steps = super::flight::flight(slab, steps, problems).ok();
    }
    room(slab, problems);
}

fn room(slab: &Slab, problems: &mut Problems) {
    let Some(thickened) = &slab.sections.thickened else {
        return;
    };
    let (key, depth) = (&slab.key, &thickened.depth);
    if depth.value <= slab.thickest() {
        let edge = if slab.sections.is_filled() {
            format!("the walls of `{key}` are")
        } else {
            format!("the thickened edge of `{key}` is")
        };
        let message = format!(
            "{edge} `{}` deep in all, no deeper than the slab",
            depth.value
        );
        problems.push(
            Problem::new("edge-too-shallow", message)
                .at(depth.place)
                .also(slab.thickness.place, "the slab's thickness")
                .help("the depth is the whole of it, from the top of the slab down"),
        );
    }
    if DEEPEST < depth.value {
        problems.push(
            Problem::new(
                "absurd-thickness",
                format!("the edge of `{key}` would be {} deep", depth.value),
            )
            .at(depth.place)
            .help("depth is in inches, for example `12 in`"),
        );
    }
    let strips = slab.thickened_strips();
    let taper = thickened.taper.as_ref().map_or(Length::ZERO, |at| at.value);
    let width = thickened.width.value + taper;
    let what = if slab.sections.is_filled() {
        "walls"
    } else {
        "edges"
    };
    if rim::too_wide(&slab.outline, &strips, width).is_some() {
        problems.push(
            Problem::new(
                "edge-too-wide",
                format!("there is no room in `{key}` for {what} `{width}` wide"),
            )
            .at(thickened.width.place)
            .help(if slab.sections.is_filled() {
                "make the walls thinner, or write `stoop: solid`"
            } else {
                "where thick edges meet, give the whole slab that thickness"
            }),
        );
    }
}
