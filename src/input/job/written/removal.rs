//! Reads a line of `remove`.

use crate::input::job::{Breaking, Removal, RemovalMaterial};
use crate::input::phrases::SizePhrase;
use crate::reading::{At, Fields, FromLine, Node, Place, Problem, Problems, Read};

impl FromLine for Removal {
    fn from_line(name: At<String>, node: &Node, problems: &mut Problems) -> Read<Self> {
        let removal = if node.is_map() {
            node.group_called(name, problems)?
        } else {
            of_concrete(name, has_depth(node.read_at(problems)?, None, problems)?)
        };
        if let Some(steel) = removal.reinforced.as_ref().filter(|at| at.value)
            && removal.material != RemovalMaterial::Concrete
        {
            let material = removal.material.name();
            let message = format!("only concrete has bars in it, and this is {material}");
            let problem = Problem::new("only-concrete", message).at(steel.place);
            problems.push(problem.help("take `reinforced` out, or write `of: concrete`"));
        }
        Ok(removal)
    }
}

/// What a size alone says.
const fn of_concrete(name: At<String>, size: At<SizePhrase>) -> Removal {
    Removal {
        name,
        size,
        depth: None,
        material: RemovalMaterial::Concrete,
        breaking: Breaking::ByHand,
        reinforced: None,
        saw_cut: None,
        stays: false,
    }
}

/// Its size, after a look at whether a depth stands in it or beside it.
pub(in crate::input::job) fn size(
    removal: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<At<SizePhrase>> {
    let depth = removal.node("depth").map(|node| node.place);
    has_depth(removal.need(key, problems)?, depth, problems)
}

/// A removal has one depth.
fn has_depth(
    size: At<SizePhrase>,
    depth: Option<Place>,
    problems: &mut Problems,
) -> Read<At<SizePhrase>> {
    let in_size = match size.value {
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => true,
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } | SizePhrase::Shape(_) => false,
    };
    let (message, place, help) = match (in_size, depth) {
        (true, None) | (false, Some(_)) => return Ok(size),
        (false, None) => (
            "a removal needs its depth too",
            size.place,
            "write, for example, `22 ft x 3 ft x 4 in`",
        ),
        (true, Some(place)) => (
            "this removal has its depth in `size` already",
            place,
            "write the depth once",
        ),
    };
    Err(problems.push(Problem::new("bad-size", message).at(place).help(help)))
}
