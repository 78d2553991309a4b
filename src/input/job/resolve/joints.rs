//! Joints that the owner draws, and those of what stays, at their places on the site.

use super::shape::{ambiguous, any_of};
use crate::geometry::{Compass, Point, Side};
use crate::input::job::sides::Sides;
use crate::input::job::takeoff::Slab;
use crate::input::job::written::SlabWritten;
use crate::input::phrases::{JointPhrase, MatchPhrase};
use crate::reading::{At, Problem, Problems, Read};
use crate::values::Length;

/// Takes them up, once the slabs lie where they lie.
pub(super) fn resolve(slabs: &mut [(Slab, SlabWritten)], problems: &mut Problems) {
    for (slab, written) in slabs {
        for one in &written.joints_at {
            let lines = drawn(slab, one, problems).into_iter().flatten();
            slab.drawn
                .extend(lines.map(|line| At::new(line, one.place)));
        }
        for one in &written.matched {
            let place = matched(slab, one, problems);
            slab.matched
                .extend(place.map(|place| At::new(place, one.place)));
        }
    }
}

/// The joint, in several parts where the slab is left open between them.
fn drawn(
    slab: &Slab,
    said: &At<JointPhrase>,
    problems: &mut Problems,
) -> Read<Vec<(Point, Point)>> {
    let (low, high) = slab.outline.bounds();
    let mut refused = |message: String, help: &str| {
        let problem = Problem::new("joint-outside", message).at(said.place);
        Err(problems.push(problem.help(help)))
    };
    match said.value {
        JointPhrase::Across { far, side } => {
            let far = far.as_nanometres();
            let (lines, at) = match side {
                Compass::West | Compass::East => {
                    let x = if side == Compass::West {
                        low.x + far
                    } else {
                        high.x - far
                    };
                    let spans = slab.outline.spans_at_x(x).into_iter();
                    let line = |(from, to)| (Point::new(x, from), Point::new(x, to));
                    (spans.map(line).collect::<Vec<_>>(), high.x - low.x)
                }
                Compass::South | Compass::North => {
                    let y = if side == Compass::South {
                        low.y + far
                    } else {
                        high.y - far
                    };
                    let spans = slab.outline.spans_at_y(y).into_iter();
                    let line = |(from, to)| (Point::new(from, y), Point::new(to, y));
                    (spans.map(line).collect::<Vec<_>>(), high.y - low.y)
                }
            };
            if lines.is_empty() {
                let message = format!(
                    "no joint runs there: `{}` reaches `{}` that way",
                    slab.key,
                    Length::nanometres(at)
                );
                return refused(
                    message,
                    "measure from the outermost point of that side of the slab",
                );
            }
            Ok(lines)
        }
        JointPhrase::Between { from, to } => {
            let (from, to) = (from.within(low, high), to.within(low, high));
            if from == to {
                let message = "this joint begins where it ends".to_owned();
                return refused(message, "give it two places");
            }
            let outside = [from, to].into_iter().find(|end| !slab.outline.has(*end));
            if outside.is_some() {
                let message = format!("an end of this joint does not lie on `{}`", slab.key);
                return refused(
                    message,
                    "measure both ends from the outermost points of the slab; its edges are part of it",
                );
            }
            Ok(vec![(from, to)])
        }
    }
}

/// Where that joint ends on the edge of the slab.
fn matched(slab: &Slab, said: &At<MatchPhrase>, problems: &mut Problems) -> Read<Point> {
    let MatchPhrase { edge, from } = said.value;
    let size = slab.size.as_ref().map(|size| size.value);
    let sides = Sides::of(size, &slab.outline);
    let bearing = sides.bearing(edge);
    let number = match bearing[..] {
        [only] if !only.of_middle && only.sides.len() == 1 => only.sides[0],
        [] | [_] => {
            let message = format!("`{}` has no side `{edge}` with two ends", slab.key);
            let names = sides.names(sides.all().iter().filter(|side| side.sides.len() == 1));
            let help = format!("write {}", any_of(&names));
            let problem = Problem::new("no-such-edge", message).at(said.place);
            return Err(problems.push(problem.help(help)));
        }
        _ => {
            let name = At::new(edge.to_string(), said.place);
            return Err(problems.push(ambiguous(&slab.key, &name, &sides.names(bearing))));
        }
    };
    let side = slab.outline.sides()[number];
    let long = Length::of_feet(side.length());
    let Some(far) = from_first(&side, from.end, from.offset, long) else {
        let (end, edge) = (from.end.name(), sides.names(bearing).concat());
        let message = format!("the side `{edge}` of `{}` has no {end} end", slab.key);
        let problem = Problem::new("bad-joint", message).at(said.place);
        return Err(problems.push(problem.help("name one of the two ends of that side")));
    };
    side.at(far).filter(|_| Length::ZERO <= far).ok_or_else(|| {
        let message = format!("that side of `{}` is only `{long}` long", slab.key);
        let problem = Problem::new("joint-outside", message).at(said.place);
        problems.push(problem.help("check the distance from its end"))
    })
}

/// How far from its first corner what lies so far from the end on that side is; none where neither end
/// lies more that way than the other.
fn from_first(side: &Side, end: Compass, far: Length, long: Length) -> Option<Length> {
    let out = |corner: Point| match end {
        Compass::North => corner.y,
        Compass::South => -corner.y,
        Compass::East => corner.x,
        Compass::West => -corner.x,
    };
    let (first, last) = (out(side.from), out(side.to));
    (first != last).then(|| if last < first { far } else { long - far })
}
