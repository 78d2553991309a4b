//! Shapes and edges of slabs, and what is wrong with an outline that does not close.

use crate::geometry::{Leg, Outline, PathError, PathLeg, WalkError};
use crate::input::job::sides::{NamedSide, Sides};
use crate::input::job::written::{ShapeWritten, SlabWritten, wrong_edge};
use crate::input::job::{EdgeKind, EdgePart, Meets};
use crate::input::phrases::{CornerPhrase, Course, EdgeName, LegPhrase, SizePhrase};
use crate::reading::{At, Place, Problem, Problems, Read, suggest};
use crate::values::Length;

pub(super) fn shape_place(shape: &ShapeWritten) -> Place {
    match shape {
        ShapeWritten::Size(size) => size.place,
        ShapeWritten::Walked(_, place)
        | ShapeWritten::Cornered(_, place)
        | ShapeWritten::Path(_, _, place) => *place,
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
        ShapeWritten::Path(legs, width, place) => {
            let middle: Vec<PathLeg> = legs.iter().map(|leg| leg.value.0).collect();
            let sides = legs.iter().map(|leg| leg.place).collect::<Vec<_>>();
            match Outline::path(&middle, width.value) {
                Ok(outline) => return Ok(outline),
                Err(PathError::Outline(error)) => (error, sides, *place),
                Err(error) => return Err(problems.push(no_path(&error, &sides, *place))),
            }
        }
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

/// What is wrong with the middle line of a path, at the leg that is wrong.
fn no_path(error: &PathError, legs: &[Place], place: Place) -> Problem {
    let (code, leg, message, help) = match error {
        PathError::NoBend { leg } => (
            "path-cannot-bend",
            leg,
            "there is nothing for this leg to bend into",
            "a leg bends into the next one, which goes on some other way than straight back and has no bulge",
        ),
        PathError::NotSmooth { leg } => (
            "path-cannot-bend",
            leg,
            "a curve meets its neighbor here at an angle",
            "a leg with a bulge stands alone or runs on into another curve; to round a corner write `bend` on the leg before it, for example `east 20 ft, bend 6 ft radius`",
        ),
        PathError::NoRoom { leg } => (
            "path-too-tight",
            leg,
            "this leg is shorter than its bends",
            "make the radius smaller; a bend of 90 degrees takes its radius from both legs",
        ),
        PathError::TooTight { leg } => (
            "path-too-tight",
            leg,
            "the inner edge of this curve has no room to turn",
            "the radius is that of the middle line, so it is at least half the width",
        ),
        PathError::Outline(error) => return wrong(error, legs, place),
    };
    let at = legs.get(*leg).copied().unwrap_or(place);
    Problem::new(code, message).at(at).help(help)
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
        ShapeWritten::Size(_) | ShapeWritten::Path(..) => None,
        ShapeWritten::Walked(legs, _) => legs.get(leg)?.value.along.against,
        ShapeWritten::Cornered(corners, _) => corners.get(leg)?.value.along.against,
    }
}

/// What stands at the sides of a slab, and in the middle of a ring.
pub(super) struct Edges {
    pub own: Vec<EdgePart>,
    pub middle: Option<EdgeKind>,
}

/// One part a side: what a leg says of itself, what `edges` says of the side, what it says of all.
pub(super) fn edges(written: &SlabWritten, outline: &Outline, problems: &mut Problems) -> Edges {
    let shape = &written.shaped.shape;
    let sides = Sides::of(shape.size(), outline);
    let leg_says = |side: &NamedSide| {
        let first = side.sides.first().filter(|_| !side.of_middle)?;
        against(shape, outline.sides()[*first].leg)
    };
    let said = written.edges.iter().flat_map(|edges| &edges.said);
    let (all, named): (Vec<_>, Vec<_>) = said.partition(|(name, _)| name.value == "all");
    let all = all.first().map(|(_, kind)| kind);
    let mut kinds: Vec<Option<(&At<String>, &At<EdgeKind>)>> = vec![None; sides.all().len()];
    for (name, kind) in named {
        let numbers = match meant(written, name, &sides, |side| leg_says(side).is_none()) {
            Ok(numbers) => numbers,
            Err(problem) => {
                problems.push(problem);
                continue;
            }
        };
        for number in numbers {
            let side = &sides.all()[number];
            let before = kinds[number].map(|(before, _)| before.place);
            let own = leg_says(side).map(|_| shape_place(shape));
            if let Some(before) = before.or(own) {
                let message = format!("`{}` says a second time what stands there", name.value);
                problems.push(
                    Problem::new("said-twice", message)
                        .at(name.place)
                        .also(before, "it is said here too")
                        .help("say it once; take one of them out"),
                );
            }
            kinds[number] = Some((name, kind));
        }
    }
    let kind = |number: usize| kinds[number].map(|(_, kind)| kind).or(all);
    let mut middle = None;
    let mut own = Vec::new();
    for (number, side) in sides.all().iter().enumerate() {
        if side.of_middle {
            middle = kind(number).map(|kind| kind.value);
            let wrong = kind(number).and_then(|kind| wrong_edge((kind.value, kind.place)));
            wrong.map(|problem| problems.push(problem));
            continue;
        }
        let kind = leg_says(side).or(kind(number).map(|kind| kind.value));
        own.extend(side.sides.iter().map(|&side| EdgePart {
            side,
            kind: kind.unwrap_or(EdgeKind::Open),
            stretch: None,
            meets: Meets::Nothing,
        }));
    }
    own.sort_by_key(|part| part.side);
    Edges { own, middle }
}

/// The one side that is meant by a name, of several the only one that fits.
fn meant(
    written: &SlabWritten,
    name: &At<String>,
    sides: &Sides<'_>,
    fits: impl Fn(&NamedSide) -> bool,
) -> Result<Vec<usize>, Problem> {
    let key = &written.key.value;
    let said = name.value.parse::<EdgeName>();
    let bearing = said.as_ref().map(|said| sides.bearing(*said));
    let bearing = bearing.unwrap_or_default();
    let fitting: Vec<&NamedSide> = bearing.iter().copied().filter(|side| fits(side)).collect();
    let number = |one: &NamedSide| sides.all().iter().position(|side| side == one);
    let meant = match (&bearing[..], &fitting[..]) {
        ([only], _) | (_, [only]) => vec![*only],
        // Both edges of a path may be of many pieces.
        _ if said.as_ref().is_ok_and(|said| said.is_whole_edge()) => fitting,
        _ => Vec::new(),
    };
    if !meant.is_empty() {
        return Ok(meant.into_iter().filter_map(number).collect());
    }
    if bearing.is_empty() {
        let names = sides.names(sides.all());
        let words: Vec<&str> = sides.words().collect();
        let known = names.iter().map(String::as_str).chain(words);
        let near = suggest::closest(&name.value, known);
        let help = match near.filter(|_| said.is_err()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("write {}; `all` means every side", any_of(&names)),
        };
        let message = format!("`{key}` has no side `{}`", name.value);
        return Err(Problem::new("no-such-edge", message)
            .at(name.place)
            .help(help));
    }
    Err(ambiguous(key, name, &sides.names(bearing)))
}

/// That a name means several sides, and the names that mean one each.
pub(super) fn ambiguous(key: &str, name: &At<String>, names: &[String]) -> Problem {
    let (name, place) = (&name.value, name.place);
    let message = format!("`{name}` may mean {} sides of `{key}`", names.len());
    let help = format!("write {}", any_of(names));
    Problem::new("ambiguous-edge", message).at(place).help(help)
}

/// ``north`, `15 ft` or `arc``.
pub(super) fn any_of(names: &[String]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    match &quoted[..] {
        [most @ .., last] if !most.is_empty() => format!("{} or {last}", most.join(", ")),
        _ => quoted.concat(),
    }
}
