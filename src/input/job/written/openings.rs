//! The openings of a slab: `cut out`, each with a name.

use super::shape::{flat, shape};
use super::{OpeningWritten, ShapeWritten};
use crate::input::job::{EdgeKind, tables};
use crate::input::phrases::SpotPhrase;
use crate::reading::{At, Node, Place, Problem, Problems};

pub(super) fn opening(
    name: At<String>,
    node: &Node,
    problems: &mut Problems,
) -> Option<OpeningWritten> {
    if !node.is_map() {
        // Only a size was said: where it lies is missing, which the owner is told with the rest.
        let size = node.read(problems).ok()?;
        let place = node.place;
        flat(At { value: size, place }, problems)?;
        problems.push(no_spot(&name).at(place));
        return None;
    }
    let fields = node.fields(&tables::OPENING, problems).ok()?;
    let shape: Option<ShapeWritten> = shape(&fields, "this opening", problems);
    let edge = fields.read::<EdgeKind>("edge", problems);
    let said = edge.iter().map(|edge| (edge.value, edge.place));
    let along = shape.iter().flat_map(ShapeWritten::against);
    let refused: Vec<Problem> = said.chain(along).filter_map(wrong_edge).collect();
    if !refused.is_empty() {
        for problem in refused {
            problems.push(problem);
        }
        return None;
    }
    if fields.node("at").is_none() {
        problems.push(no_spot(&name).at(fields.heading()));
        return None;
    }
    let at = fields.read::<SpotPhrase>("at", problems);
    Some(OpeningWritten {
        name,
        shape: shape?,
        at: at?,
        edge: edge.map_or(EdgeKind::Open, |edge| edge.value),
    })
}

fn wrong_edge((kind, place): (EdgeKind, Place)) -> Option<Problem> {
    let message = match kind {
        EdgeKind::Joined
        | EdgeKind::Bulkhead
        | EdgeKind::DoweledBulkhead
        | EdgeKind::TiedBulkhead => {
            "nothing is poured in an opening that its edge could be joined to"
        }
        EdgeKind::DoweledExisting | EdgeKind::TiedExisting => {
            "dowels and ties are not counted around an opening"
        }
        EdgeKind::Open
        | EdgeKind::House
        | EdgeKind::Existing
        | EdgeKind::Curb
        | EdgeKind::Isolated => return None,
    };
    let problem = Problem::new("bad-opening-edge", message).at(place).help(
        "leave `edge` out for a form, or write `existing concrete`, `house`, `curb` or `isolated` for a strip around what stands there",
    );
    Some(problem)
}

fn no_spot(name: &At<String>) -> Problem {
    let message = format!("nobody says where `{}` lies", name.value);
    Problem::new("no-spot", message)
        .help("write, for example, `{size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}`")
}
