//! The shape of a slab or of an opening: a size, an outline as walked, or its corners.

use crate::input::checks::some_length;
use crate::input::job::EdgeKind;
use crate::input::phrases::{Along, CornerPhrase, Course, LegPhrase, PathLegPhrase, SizePhrase};
use crate::reading::keys::keys;
use crate::reading::{At, Fields, Node, Place, Problem, Problems, Read, Value, WithAnother};
use crate::values::Length;

#[derive(Clone, Debug)]
pub enum ShapeWritten {
    Size(At<SizePhrase>),
    Walked(Vec<At<LegPhrase>>, Place),
    Cornered(Vec<At<CornerPhrase>>, Place),
    /// The middle line, and how wide.
    Path(Vec<At<PathLegPhrase>>, At<Length>, Place),
}

keys! {
    pub struct Shaped in "" {
        shape: ShapeWritten = "size" as "size", none,
            "east-west x north-south, or `circle` and a diameter, or another shape by name",
            "12 ft x 15 ft", by shape;
        _outline: WithAnother = "outline" as "list of sides", none,
            "the sides as walked with the tape", "[east 24 ft, south 12 ft, west 24 ft, north 12 ft]";
        _corners: WithAnother = "corners" as "list of positions", none,
            "each corner so far east and so far north of one fixed point",
            "[[0 ft, 0 ft], [24 ft, 0 ft], [18 ft, 12 ft]]";
        _path: WithAnother = "path" as "list of legs", none,
            "the middle line of a strip of even width, leg by leg",
            "[\"east 20 ft, bend 6 ft radius\", north 12 ft]";
        _width: WithAnother = "width" as "length", none, "of a path, square to its middle line", "4 ft";
    }
}

impl Shaped {
    pub(super) const fn only(shape: ShapeWritten) -> Self {
        Shaped {
            shape,
            _outline: WithAnother,
            _corners: WithAnother,
            _path: WithAnother,
            _width: WithAnother,
        }
    }
}

impl ShapeWritten {
    /// The size, where it has one.
    pub(in crate::input::job) fn size(&self) -> Option<SizePhrase> {
        match self {
            Self::Size(size) => Some(size.value),
            Self::Walked(..) | Self::Cornered(..) | Self::Path(..) => None,
        }
    }

    /// Of a path.
    pub fn width(&self) -> Option<At<Length>> {
        match self {
            Self::Path(_, width, _) => Some(width.clone()),
            Self::Size(_) | Self::Walked(..) | Self::Cornered(..) => None,
        }
    }

    /// What its sides say they stand against, and where.
    pub(super) fn against(&self) -> Vec<(EdgeKind, Place)> {
        fn said<T>(sides: &[At<T>], along: fn(&T) -> &Along) -> Vec<(EdgeKind, Place)> {
            let sides = sides.iter();
            sides
                .filter_map(|side| Some((along(&side.value).against?, side.place)))
                .collect()
        }
        match self {
            Self::Size(_) | Self::Path(..) => Vec::new(),
            Self::Walked(legs, _) => said(legs, |leg| &leg.along),
            Self::Cornered(corners, _) => said(corners, |corner| &corner.along),
        }
    }
}

/// The one shape that the keys `size`, `outline` and `corners` of a group give.
fn shape(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<ShapeWritten> {
    let given: Vec<(&str, &Node)> = [key, "outline", "corners", "path"]
        .into_iter()
        .filter_map(|key| fields.node(key).map(|node| (key, node)))
        .collect();
    let is_path = given.iter().any(|(key, _)| *key == "path");
    if let Some(width) = fields.node("width").filter(|_| !is_path) {
        let problem = Problem::new("width-without-path", "a `width` belongs to a `path`");
        let help = "write the middle line under `path`, or both measures under `size`";
        return Err(problems.push(problem.at(width.place).help(help)));
    }
    match given[..] {
        [(one, _), (other, node), ..] => {
            let message = format!("{} has both a `{one}` and `{other}`", fields.this());
            let message = message.replace("and `outline`", "and an `outline`");
            let problem = Problem::new("two-shapes", message).at(node.place);
            Err(problems.push(problem.help("keep the one you measured")))
        }
        [("outline", node)] => walked(node, problems),
        [("corners", node)] => cornered(node, problems),
        [("path", node)] => path(fields, node, problems),
        _ => flat(fields.need(key, problems)?, problems),
    }
}

/// A slab's size has no depth in it; its thickness has a key of its own.
pub(super) fn flat(size: At<SizePhrase>, problems: &mut Problems) -> Read<ShapeWritten> {
    match size.value {
        SizePhrase::Rectangle { .. } | SizePhrase::Circle { .. } | SizePhrase::Shape(_) => {
            Ok(ShapeWritten::Size(size))
        }
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => {
            let problem = Problem::new("bad-size", "a slab's size is length and width only");
            let help = "write `size: 12 ft x 15 ft` and, below it, `thickness: 4 in`";
            Err(problems.push(problem.at(size.place).help(help)))
        }
    }
}

/// Every item of a list, or none where one could not be read.
fn each<T>(items: &[&Node], mut read: impl FnMut(&Node) -> Read<T>) -> Read<Vec<At<T>>> {
    let read: Vec<Read<At<T>>> = items
        .iter()
        .map(|item| Ok(At::new(read(item)?, item.place)))
        .collect();
    read.into_iter().collect()
}

fn walked(node: &Node, problems: &mut Problems) -> Read<ShapeWritten> {
    let sides = node.items("`outline`", problems);
    let legs: Vec<At<LegPhrase>> = each(&sides, |side| side.read(problems))?;
    let is_back = |leg: &At<LegPhrase>| leg.value.way == Course::BackToStart;
    if let Some(i) = legs.iter().position(is_back)
        && let Some(after) = legs.get(i + 1)
    {
        let problem = Problem::new("after-start", "a side follows `back to start`").at(after.place);
        let problem = problem.also(legs[i].place, "here the outline is closed");
        return Err(problems.push(problem.help("let `back to start` be the last side")));
    }
    Ok(ShapeWritten::Walked(legs, node.place))
}

fn cornered(node: &Node, problems: &mut Problems) -> Read<ShapeWritten> {
    let items = node.items("`corners`", problems);
    let corners = each(&items, |item| corner(item, problems))?;
    Ok(ShapeWritten::Cornered(corners, node.place))
}

/// Legs along the middle, and the width that they have no place for.
fn path(fields: &Fields<'_>, node: &Node, problems: &mut Problems) -> Read<ShapeWritten> {
    let items = node.items("`path`", problems);
    let legs = each(&items, |leg| leg.read(problems));
    if fields.node("width").is_none() {
        let problem = Problem::new("path-without-width", "nothing says how wide this path is");
        let help = "write it beside the path, for example `width: 4 ft`";
        return Err(problems.push(problem.at(node.heading).help(help)));
    }
    let width = some_length(fields, "width", problems)?;
    Ok(ShapeWritten::Path(legs?, width, node.place))
}

/// `24 ft, 12 ft`, or the same in brackets.
fn corner(item: &Node, problems: &mut Problems) -> Read<CornerPhrase> {
    let Value::List(parts) = &item.value else {
        return item.read(problems);
    };
    let texts: Vec<Read<&str>> = parts
        .iter()
        .map(|part| part.text("this", problems))
        .collect();
    let texts: Vec<&str> = texts.into_iter().collect::<Read<_>>()?;
    let corner = texts.join(", ").parse();
    corner.map_err(|unreadable| problems.unreadable(unreadable, item.place))
}
