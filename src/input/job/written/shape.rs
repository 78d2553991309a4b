//! The shape of a slab or of an opening: a size, an outline as walked, or its corners.

use super::ShapeWritten;
use crate::input::phrases::{CornerPhrase, LegPhrase, SizePhrase, Way};
use crate::reading::{At, Fields, Node, Problem, Problems, Value};

/// The one shape that the keys `size`, `outline` and `corners` of a group give; `what` stands in messages.
pub(super) fn shape(
    fields: &Fields<'_>,
    what: &str,
    problems: &mut Problems,
) -> Option<ShapeWritten> {
    let given: Vec<(&str, &Node)> = ["size", "outline", "corners"]
        .into_iter()
        .filter_map(|key| fields.node(key).map(|node| (key, node)))
        .collect();
    match given[..] {
        [(one, _), (other, node), ..] => {
            let message = format!("{what} has both a `{one}` and `{other}`");
            let message = message.replace("and `outline`", "and an `outline`");
            problems.push(
                Problem::new("two-shapes", message)
                    .at(node.place)
                    .help("keep the one you measured"),
            );
            None
        }
        [("outline", node)] => walked(node, problems),
        [("corners", node)] => cornered(node, problems),
        _ => fields
            .need("size", problems)
            .ok()
            .and_then(|size| flat(size, problems)),
    }
}

/// A slab's size has no depth in it; its thickness has a key of its own.
pub(super) fn flat(size: At<SizePhrase>, problems: &mut Problems) -> Option<ShapeWritten> {
    match size.value {
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } | SizePhrase::Shape(_) => {
            Some(ShapeWritten::Size(size))
        }
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => {
            let problem =
                Problem::new("bad-size", "a slab's size is length and width only").at(size.place);
            problems
                .push(problem.help("write `size: 12 ft x 15 ft` and, below it, `thickness: 4 in`"));
            None
        }
    }
}

fn walked(node: &Node, problems: &mut Problems) -> Option<ShapeWritten> {
    let sides = node.items("`outline`", problems);
    let legs: Vec<Option<At<LegPhrase>>> = sides
        .iter()
        .map(|side| {
            side.read(problems).ok().map(|value| At {
                value,
                place: side.place,
            })
        })
        .collect();
    let legs: Vec<At<LegPhrase>> = legs.into_iter().collect::<Option<_>>()?;
    let is_back = |leg: &At<LegPhrase>| leg.value.way == Way::BackToStart;
    if let Some(i) = legs.iter().position(is_back)
        && let Some(after) = legs.get(i + 1)
    {
        problems.push(
            Problem::new("after-start", "a side follows `back to start`")
                .at(after.place)
                .also(legs[i].place, "here the outline is closed")
                .help("let `back to start` be the last side"),
        );
        return None;
    }
    Some(ShapeWritten::Walked(legs, node.place))
}

fn cornered(node: &Node, problems: &mut Problems) -> Option<ShapeWritten> {
    let items = node.items("`corners`", problems);
    let corners: Vec<Option<At<CornerPhrase>>> = items
        .iter()
        .map(|item| {
            corner(item, problems).map(|value| At {
                value,
                place: item.place,
            })
        })
        .collect();
    let corners: Option<Vec<At<CornerPhrase>>> = corners.into_iter().collect();
    corners.map(|corners| ShapeWritten::Cornered(corners, node.place))
}

/// `24 ft, 12 ft`, or the same in brackets.
fn corner(item: &Node, problems: &mut Problems) -> Option<CornerPhrase> {
    let Value::List(parts) = &item.value else {
        return item.read(problems).ok();
    };
    let texts: Option<Vec<&str>> = parts
        .iter()
        .map(|part| part.text("this", problems).ok())
        .collect();
    match texts?.join(", ").parse() {
        Ok(corner) => Some(corner),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(item.place));
            None
        }
    }
}
