//! Reads thickened edges and steps: a group of keys, or all in one line.

pub mod keys;

use self::keys as tables;
use crate::geometry::Compass;
use crate::input::phrases::{EdgeSort, EdgesPhrase, Risers, StepsWritten, Thickened, positive};
use crate::reading::{At, Fields, Node, Problem, Problems, Read};
use crate::values::{Length, Unreadable};

/// `Some` of nothing is an explicit `none`.
pub fn thickened(
    slab: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<Option<Thickened>>>> {
    let node = slab.node(key);
    Ok(node.and_then(|node| thickened_at(node, problems)))
}

fn thickened_at(node: &Node, problems: &mut Problems) -> Option<At<Option<Thickened>>> {
    if node.is_map() {
        let value = thickened_by_keys(node, problems)?;
        return Some(At::new(Some(value), node.heading));
    }
    let text = node.text("`thickened`", problems).ok()?;
    if text.trim() == "none" {
        return Some(At::new(None, node.heading));
    }
    let read = Thickened::said(text, node.place);
    let value = read.map_err(|unreadable| problems.unreadable(unreadable, node.place));
    Some(At::new(Some(value.ok()?), node.place))
}

fn thickened_by_keys(node: &Node, problems: &mut Problems) -> Option<Thickened> {
    let fields = node.fields(&tables::THICKENED, problems).ok()?;
    let edges = fields.required("edges", problems);
    let edges = edges.ok().and_then(|node| edges_of(node, problems));
    let sort: Option<At<EdgeSort>> = fields.need("kind", problems).ok();
    let width = needed(&fields, "width", problems);
    let depth = needed(&fields, "depth", problems);
    let taper = length(&fields, "taper", problems);
    let bars = fields.read("bars", problems);
    Some(Thickened {
        sort: sort?.value,
        edges: edges?,
        width: width.ok()?,
        depth: depth.ok()?,
        taper: taper.ok()?,
        bars,
    })
}

fn edges_of(node: &Node, problems: &mut Problems) -> Option<At<EdgesPhrase>> {
    if !node.is_list() {
        return node
            .read(problems)
            .ok()
            .map(|edges| At::new(edges, node.place));
    }
    let names: Vec<Option<crate::input::phrases::EdgeName>> = node
        .items("`edges`", problems)
        .into_iter()
        .map(|item| item.read(problems).ok())
        .collect();
    let names: Option<Vec<_>> = names.into_iter().collect();
    let names = names?;
    if names.is_empty() {
        problems.push(
            Problem::new("bad-edges", "no edge is named")
                .at(node.heading)
                .help("write `all`, `all open`, or sides such as `[north, south]`"),
        );
        return None;
    }
    Some(At::new(EdgesPhrase::Named(names), node.heading))
}

pub fn steps(
    slab: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<StepsWritten>> {
    let node = slab.node(key);
    Ok(node.and_then(|node| steps_at(node, problems)))
}

fn steps_at(node: &Node, problems: &mut Problems) -> Option<StepsWritten> {
    let read = if node.is_map() {
        steps_by_keys(node, problems)?
    } else {
        let text = node.text("this", problems).ok()?;
        let read = StepsWritten::said(text, node.place);
        let read = read.map_err(|unreadable| problems.unreadable(unreadable, node.place));
        read.ok()?
    };
    let risers = &read.risers;
    if 1 < risers.value && read.tread.is_none() {
        let message = format!(
            "{} risers, and nothing says how deep a tread is",
            risers.value
        );
        problems.push(
            Problem::new("bad-steps", message)
                .at(risers.place)
                .help("add `tread: 12 in`, or in one line `12 in treads`"),
        );
        return None;
    }
    if let Some(from) = &read.from {
        let end = from.value.of(read.edge.value, "bad-steps");
        end.map_err(|unreadable| problems.unreadable(unreadable, from.place))
            .ok()?;
    }
    Some(read)
}

fn steps_by_keys(node: &Node, problems: &mut Problems) -> Option<StepsWritten> {
    let fields = node.fields(&tables::STEPS, problems).ok()?;
    let risers = fields.need::<Risers>("risers", problems).ok();
    let rise = needed(&fields, "rise", problems);
    let edge = fields.need::<EdgeWord>("from", problems).ok();
    let tread = length(&fields, "tread", problems);
    let width = length(&fields, "width", problems);
    let total = length(&fields, "in all", problems);
    let from = match fields.node("at") {
        None => Some(None),
        Some(_) => fields.read("at", problems).map(Some),
    };
    Some(StepsWritten {
        place: node.heading,
        risers: risers?.map(|risers| risers.0),
        rise: rise.ok()?,
        tread: tread.ok()?,
        width: width.ok()?,
        edge: edge?.map(|word| word.0),
        from: from?,
        total: total.ok()?,
    })
}

/// `south edge`, or only `south`.
struct EdgeWord(Compass);

crate::reading::written::written! { EdgeWord = "word"; }

impl std::str::FromStr for EdgeWord {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        text.strip_suffix(" edge").unwrap_or(text).parse().map(Self)
    }
}

/// A length that has to be there, above zero.
fn needed(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Read<At<Length>> {
    above_zero(fields.required(key, problems)?, problems)
}

/// A length that may be left out.
fn length(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Read<Option<At<Length>>> {
    match fields.node(key) {
        None => Ok(None),
        Some(node) => above_zero(node, problems).map(Some),
    }
}

fn above_zero(node: &Node, problems: &mut Problems) -> Read<At<Length>> {
    let text = node.text("a length", problems)?;
    let read = positive(text).map_err(|unreadable| problems.unreadable(unreadable, node.place));
    Ok(At::new(read?, node.place))
}
