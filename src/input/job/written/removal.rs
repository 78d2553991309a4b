//! Reads a line of `remove`.

use crate::input::job::tables;
use crate::input::job::{Breaking, Removal, RemovalMaterial};
use crate::input::phrases::SizePhrase;
use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::Length;

pub(super) fn removal(name: At<String>, node: &Node, problems: &mut Problems) -> Option<Removal> {
    if !node.is_map() {
        let size = At {
            value: node.read::<SizePhrase>(problems).ok()?,
            place: node.place,
        };
        has_depth(&size, None, problems).then_some(())?;
        return Some(Removal {
            name,
            size,
            depth: None,
            material: RemovalMaterial::Concrete,
            breaking: Breaking::ByHand,
            reinforced: false,
            saw_cut: None,
            stays: false,
        });
    }
    let fields = node.fields(&tables::REMOVAL, problems).ok()?;
    let size = fields.need("size", problems).ok();
    let depth = above_zero(&fields, "depth", problems);
    let saw_cut = above_zero(&fields, "saw cut", problems);
    let material: Option<At<RemovalMaterial>> = fields.need("of", problems).ok();
    let breaking: Option<At<_>> = fields.need("break", problems).ok();
    let reinforced = fields.yes("reinforced", problems);
    let stays = fields.yes("stays", problems).is_some_and(|at| at.value);
    let (size, material) = (size?, material?.value);
    if let Some(steel) = reinforced
        .as_ref()
        .filter(|at| at.value && material != RemovalMaterial::Concrete)
    {
        let message = format!(
            "only concrete has bars in it, and this is {}",
            material.name()
        );
        problems.push(
            Problem::new("only-concrete", message)
                .at(steel.place)
                .help("take `reinforced` out, or write `of: concrete`"),
        );
    }
    has_depth(&size, depth.as_ref(), problems).then_some(())?;
    Some(Removal {
        name,
        size,
        depth,
        material,
        breaking: breaking?.value,
        reinforced: reinforced.is_some_and(|at| at.value),
        saw_cut,
        stays,
    })
}

/// A removal has one depth, in its size or beside it.
fn has_depth(size: &At<SizePhrase>, depth: Option<&At<Length>>, problems: &mut Problems) -> bool {
    let in_size = match size.value {
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => true,
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } | SizePhrase::Shape(_) => false,
    };
    match (in_size, depth) {
        (true, None) | (false, Some(_)) => true,
        (false, None) => {
            problems.push(
                Problem::new("bad-size", "a removal needs its depth too")
                    .at(size.place)
                    .help("write, for example, `22 ft x 3 ft x 4 in`"),
            );
            false
        }
        (true, Some(depth)) => {
            problems.push(
                Problem::new("bad-size", "this removal has its depth in `size` already")
                    .at(depth.place)
                    .help("write the depth once"),
            );
            false
        }
    }
}

fn above_zero(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<Length>> {
    let text = fields.read::<String>(key, problems)?;
    match crate::input::phrases::positive(&text.value) {
        Ok(value) => Some(At {
            value,
            place: text.place,
        }),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(text.place));
            None
        }
    }
}
