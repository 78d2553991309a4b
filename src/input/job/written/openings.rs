//! The openings of a slab: `cut out`, each with a name.

use super::shape::{flat, shape};
use super::{OpeningWritten, ShapeWritten};
use crate::input::job::{EdgeKind, tables};
use crate::input::phrases::SpotPhrase;
use crate::reading::{At, Node, Problem, Problems};

pub(super) fn opening(
    name: At<String>,
    node: &Node,
    problems: &mut Problems,
) -> Option<OpeningWritten> {
    if !node.is_map() {
        // Only a size was said: where it lies is missing, which the owner is told with the rest.
        let size = node.read(problems)?;
        let place = node.place;
        flat(At { value: size, place }, problems)?;
        problems.push(no_spot(&name).at(place));
        return None;
    }
    let fields = node.fields(&tables::OPENING, problems)?;
    let shape: Option<ShapeWritten> = shape(&fields, "this opening", problems);
    let edge = fields.read::<EdgeKind>("edge", problems);
    if let Some(edge) = &edge
        && matches!(edge.value, EdgeKind::Joined | EdgeKind::Bulkhead)
    {
        problems.push(
            Problem::new("bad-opening-edge", "nothing is poured in an opening that its edge could be joined to")
                .at(edge.place)
                .help("leave `edge` out for a form, or write `existing concrete`, `house`, `curb` or `isolated` for a strip around what stands there"),
        );
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

fn no_spot(name: &At<String>) -> Problem {
    let message = format!("nobody says where `{}` lies", name.value);
    Problem::new("no-spot", message)
        .help("write, for example, `{size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}`")
}
