//! The openings of a slab: `cut out`, each with a name.

use super::shape::{Shaped, flat};
use crate::input::job::EdgeKind;
use crate::input::phrases::SpotPhrase;
use crate::reading::keys::keys;
use crate::reading::{
    At, Below, Fields, FromLine, Group as _, Node, Place, Problem, Problems, Read,
};

keys! {
    /// Something in a slab that is left open.
    pub struct OpeningWritten in "an opening" {
        ^ name: At<String>;
        ^ shaped: Shaped;
        at: At<SpotPhrase> = "at", required,
            "from two sides of the slab to the nearest sides of the opening",
            "6 ft from west and 4 ft from north", by spot;
        edge: Option<At<EdgeKind>> = "edge" as "kind of edge", else "open",
            "what stands in it: open is a form; existing concrete, house, curb or isolated is a strip",
            "existing concrete";
    } then with_edges_of_its_own
}

impl OpeningWritten {
    /// What stands along it where its sides do not say.
    pub fn kind(&self) -> EdgeKind {
        self.edge.as_ref().map_or(EdgeKind::Open, |edge| edge.value)
    }
}

impl FromLine for OpeningWritten {
    const BELOW: Below = Below::Each(&[Self::TABLE]);

    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        if node.is_map() {
            return node.group_called(name, problems);
        }
        // Only a size was said: where it lies is missing, which the owner is told with the rest.
        flat(node.read_at(problems)?, problems)?;
        Err(problems.push(no_spot(Some(&name)).at(node.place)))
    }
}

fn spot(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<At<SpotPhrase>> {
    if fields.node(key).is_none() {
        return Err(problems.push(no_spot(fields.name()).at(fields.heading())));
    }
    fields.need(key, problems)
}

fn with_edges_of_its_own(
    opening: OpeningWritten,
    _: &Fields<'_>,
    problems: &mut Problems,
) -> Read<OpeningWritten> {
    let said = opening.edge.iter().map(|edge| (edge.value, edge.place));
    let along = opening.shaped.shape.against();
    let mut refused = Ok(());
    for problem in said.chain(along).filter_map(wrong_edge) {
        refused = Err(problems.push(problem));
    }
    refused.map(|()| opening)
}

/// What is wrong with this kind of edge around an opening.
pub(in crate::input::job) fn wrong_edge((kind, place): (EdgeKind, Place)) -> Option<Problem> {
    let message = match kind {
        EdgeKind::Joined
        | EdgeKind::Bulkhead
        | EdgeKind::DoweledBulkhead
        | EdgeKind::TiedBulkhead
        | EdgeKind::KeyedBulkhead => {
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

fn no_spot(name: Option<&At<String>>) -> Problem {
    let name = name.map_or("it", |name| &name.value);
    let message = format!("nobody says where `{name}` lies");
    Problem::new("no-spot", message)
        .help("write, for example, `{size: 3 ft x 3 ft, at: 6 ft from west and 4 ft from north}`")
}
