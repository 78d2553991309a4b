//! Reads thickened edges and steps: a group of keys, or all in one line.

use crate::geometry::Compass;
use crate::input::job::sections::Thickened;
use crate::input::job::tables;
use crate::input::phrases::{
    EdgeSort, EdgesPhrase, FromEnd, Risers, StepsPhrase, StoopPhrase, ThickenedPhrase, positive,
};
use crate::reading::{At, Fields, Node, Place, Problem, Problems, Read};
use crate::values::{Length, Unreadable};

/// Steps and what carries their top, as written.
#[derive(Clone, Debug, Default)]
pub struct SectionsWritten {
    pub steps: Option<StepsWritten>,
    pub stoop: Option<At<StoopPhrase>>,
}

#[derive(Clone, Debug)]
pub struct StepsWritten {
    pub place: Place,
    pub risers: At<u32>,
    pub rise: At<Length>,
    pub tread: Option<At<Length>>,
    pub width: Option<At<Length>>,
    pub edge: At<Compass>,
    pub from: Option<At<FromEnd>>,
    pub total: Option<At<Length>>,
}

impl SectionsWritten {
    pub fn read(slab: &Fields<'_>, problems: &mut Problems) -> Self {
        Self {
            steps: slab.node("steps").and_then(|node| steps(node, problems)),
            stoop: slab.read("stoop", problems),
        }
    }
}

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
    let place = node.heading;
    if node.is_map() {
        let fields = node.fields(&tables::THICKENED, problems).ok()?;
        let edges = fields
            .required("edges", problems)
            .ok()
            .and_then(|node| edges(node, problems));
        let sort: Option<At<EdgeSort>> = fields.need("kind", problems).ok();
        let (width, depth) = (
            fields
                .required("width", problems)
                .ok()
                .and_then(|node| long(node, problems)),
            fields
                .required("depth", problems)
                .ok()
                .and_then(|node| long(node, problems)),
        );
        let taper = fields.node("taper").map(|node| long(node, problems));
        let bars = fields.read("bars", problems);
        let taper = match taper {
            None => None,
            Some(read) => Some(read?),
        };
        let value = Thickened {
            sort: sort?.value,
            edges: edges?,
            width: width?,
            depth: depth?,
            taper,
            bars,
        };
        return Some(At {
            value: Some(value),
            place,
        });
    }
    let text = node.text("`thickened`", problems).ok()?;
    if text.trim() == "none" {
        return Some(At { value: None, place });
    }
    let place = node.place;
    let phrase: ThickenedPhrase = node.read(problems).ok()?;
    let value = Thickened {
        sort: phrase.sort,
        edges: at(phrase.edges, place),
        width: at(phrase.width, place),
        depth: at(phrase.depth, place),
        taper: phrase.taper.map(|taper| at(taper, place)),
        bars: phrase.bars.map(|bars| at(bars, place)),
    };
    Some(at(Some(value), place))
}

fn edges(node: &Node, problems: &mut Problems) -> Option<At<EdgesPhrase>> {
    if !node.is_list() {
        return node.read(problems).ok().map(|edges| at(edges, node.place));
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
    Some(at(EdgesPhrase::Named(names), node.heading))
}

fn steps(node: &Node, problems: &mut Problems) -> Option<StepsWritten> {
    let read = if node.is_map() {
        by_keys(node, problems)?
    } else {
        let place = node.place;
        let phrase: StepsPhrase = node.read(problems).ok()?;
        StepsWritten {
            place,
            risers: at(phrase.risers.0, place),
            rise: at(phrase.rise, place),
            tread: phrase.tread.map(|tread| at(tread, place)),
            width: phrase.width.map(|width| at(width, place)),
            edge: at(phrase.edge, place),
            from: phrase
                .from
                .map(|(offset, end)| at(FromEnd { offset, end }, place)),
            total: phrase.total.map(|total| at(total, place)),
        }
    };
    if 1 < read.risers.value && read.tread.is_none() {
        problems.push(
            Problem::new(
                "bad-steps",
                format!(
                    "{} risers, and nothing says how deep a tread is",
                    read.risers.value
                ),
            )
            .at(read.risers.place)
            .help("add `tread: 12 in`, or in one line `12 in treads`"),
        );
        return None;
    }
    if let Some(from) = &read.from
        && (from.value.end == read.edge.value || from.value.end == read.edge.value.opposite())
    {
        let (edge, end) = (read.edge.value.name(), from.value.end.name());
        problems.push(
            Problem::new("bad-steps", format!("the {edge} edge has no {end} end"))
                .at(from.place)
                .help("name one of the two ends of that edge"),
        );
        return None;
    }
    Some(read)
}

fn by_keys(node: &Node, problems: &mut Problems) -> Option<StepsWritten> {
    let fields = node.fields(&tables::STEPS, problems).ok()?;
    let risers = fields.need::<Risers>("risers", problems).ok();
    let rise = fields
        .required("rise", problems)
        .ok()
        .and_then(|node| long(node, problems));
    let edge = fields.need::<EdgeWord>("from", problems).ok();
    let mut length = |key: &str| match fields.node(key) {
        None => Some(None),
        Some(node) => long(node, problems).map(Some),
    };
    let (tread, width, total) = (length("tread"), length("width"), length("in all"));
    let from = match fields.node("at") {
        None => Some(None),
        Some(_) => fields.read("at", problems).map(Some),
    };
    Some(StepsWritten {
        place: node.heading,
        risers: risers?.map(|risers| risers.0),
        rise: rise?,
        tread: tread?,
        width: width?,
        edge: edge?.map(|word| word.0),
        from: from?,
        total: total?,
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

fn long(node: &Node, problems: &mut Problems) -> Option<At<Length>> {
    let text = node.text("a length", problems).ok()?;
    match positive(text) {
        Ok(value) => Some(at(value, node.place)),
        Err(unreadable) => {
            problems.push(Problem::from(unreadable).at(node.place));
            None
        }
    }
}

fn at<T>(value: T, place: Place) -> At<T> {
    At { value, place }
}
