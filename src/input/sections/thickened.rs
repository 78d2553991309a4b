//! `all open, 12 in wide, 12 in deep, 2 no. 4`: which edges of a slab go deeper, and how far.

use super::{Spoken, spoken};
use crate::input::checks::{length_of_some, some_length};
use crate::input::phrases::reader::{PhraseKind, phrase, read, said_twice};
use crate::input::phrases::{EdgeName, EdgesPhrase};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Place, Problem, Problems, Read, words};
use crate::tables::bars::Bar;
use crate::values::{Length, Unreadable};

keys! {
    /// Edges that go deeper than the slab; each part knows where it was said.
    #[derive(PartialEq, Eq)]
    pub struct Thickened in "`thickened`" {
        edges: At<EdgesPhrase> = "edges" as "edges or list", required,
            "`all`, `all open`, or sides by direction, length, number or name", "[north, south]", by edges;
        width: At<Length> = "width", required, "at the bottom", "12 in", by some_length;
        depth: At<Length> = "depth", required,
            "the whole of it, from the top of the slab", "12 in", by some_length;
        taper: Option<At<Length>> = "taper", else "square inside",
            "how far inside the bottom comes up to the slab", "12 in", by length_of_some;
        bars: Option<At<EdgeBars>> = "bars" as "number and bar", else "none", "along the edge", "2 no. 4";
        sort: EdgeSort = "kind" as "word", usual "thickened",
            "thickened or turndown; the customer reads it", "turndown";
    }
}

placeless! { EdgeSort }

words! {
    /// A thickened edge, or a turned-down one: the same concrete, said otherwise.
    pub enum EdgeSort("unknown-word", "`kind` is not `{}`", choose) {
        Thickened "thickened";
        Turndown "turndown";
    }
}

/// How many bars run along the edge, and which.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EdgeBars {
    pub count: u32,
    pub bar: Bar,
}

phrase!(
    EdgeBars,
    "bars",
    "bad-edge-bars",
    "bars along an edge",
    "write how many and which, for example `2 no. 4`",
    |said| {
        let (count, bar) = said.halves(" ")?;
        let count = said.need(count.count(1..=12))?;
        let bar = bar.before(" bars").unwrap_or(bar).read()?;
        Ok(EdgeBars { count, bar })
    }
);

const THICKENED: PhraseKind = PhraseKind {
    code: "bad-thickened",
    what: "a thickened edge",
    help: "write the edges, the width and the whole depth, for example `all open, 12 in wide, 12 in deep`; `taper 12 in` and `2 no. 4` may follow",
};

impl Spoken for Thickened {
    fn said(text: &str, place: Place) -> Result<Self, Unreadable> {
        read(text, THICKENED, |said| {
            let (mut sort, mut edges) = (None, Vec::new());
            let (mut width, mut depth, mut taper, mut bars) = (None, None, None, None);
            for part in said.parts(&[","]) {
                if part.is("turndown") {
                    part.once("what they are", &mut sort, EdgeSort::Turndown)?;
                } else if let Some(wide) = part.before(" wide") {
                    part.once("how wide they are", &mut width, wide.positive()?)?;
                } else if let Some(deep) = part.before(" deep") {
                    part.once("how deep they are", &mut depth, deep.positive()?)?;
                } else if let Some(run) = part.after("taper ") {
                    part.once("how they taper", &mut taper, run.positive()?)?;
                } else if part.text().contains("no.") || part.text().ends_with(" bars") {
                    part.once("which bars they have", &mut bars, part.read()?)?;
                } else {
                    edges.push(part);
                }
            }
            let (width, depth) = said.need(width.zip(depth))?;
            let edges = said.need(EdgesPhrase::said(&edges)?)?;
            Ok(Self {
                sort: sort.unwrap_or(EdgeSort::Thickened),
                edges: At::new(edges, place),
                width: At::new(width, place),
                depth: At::new(depth, place),
                taper: taper.map(|taper| At::new(taper, place)),
                bars: bars.map(|bars| At::new(bars, place)),
            })
        })
    }
}

/// Thickened edges, in one line or by keys; `Some` of nothing is an explicit `none`.
pub fn thickened(
    slab: &Fields<'_>,
    key: &'static str,
    problems: &mut Problems,
) -> Read<Option<At<Option<Thickened>>>> {
    let Some(node) = slab.node(key) else {
        return Ok(None);
    };
    if !node.is_map() && node.text(&format!("`{key}`"), problems)?.trim() == "none" {
        return Ok(Some(At::new(None, node.heading)));
    }
    let place = if node.is_map() {
        node.heading
    } else {
        node.place
    };
    Ok(Some(At::new(Some(spoken(node, key, problems)?), place)))
}

/// One phrase, or a list of edges.
fn edges(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<At<EdgesPhrase>> {
    let node = fields.required(key, problems)?;
    if !node.is_list() {
        return node.read_at(problems);
    }
    let before = problems.len();
    let mut names = Vec::<EdgeName>::new();
    for item in node.items("`edges`", problems) {
        match item.read(problems) {
            Ok(name) if names.contains(&name) => {
                let text = item.text("an edge", problems)?;
                problems.unreadable(said_twice(text, "an edge"), item.place);
            }
            Ok(name) => names.push(name),
            Err(_) => {}
        }
    }
    problems.none_since(before)?;
    if names.is_empty() {
        let problem = Problem::new("bad-edges", "no edge is named").at(node.heading);
        let help = "write `all`, `all open`, or sides such as `[north, south]`";
        return Err(problems.push(problem.help(help)));
    }
    Ok(At::new(EdgesPhrase::Named(names), node.heading))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Direction;
    use crate::input::phrases::reader::tests::refused;
    use crate::reading::FileId;

    fn said(text: &str) -> Result<Thickened, Unreadable> {
        let here = Place {
            file: FileId(0),
            start: 0,
            end: 0,
        };
        Thickened::said(text, here)
    }

    #[test]
    fn reads_a_thickened_edge_in_one_line() {
        let read = said("north and east, 12 in wide, 16 in deep, taper 6 in, 2 no. 4").unwrap();
        let edges = [Direction::North, Direction::East].map(EdgeName::Looking);
        assert_eq!(read.edges.value, EdgesPhrase::Named(edges.to_vec()));
        assert_eq!(read.width.value, Length::inches_whole(12));
        assert_eq!(read.depth.value, Length::inches_whole(16));
        let taper = read.taper.map(|taper| taper.value);
        assert_eq!(taper, Some(Length::inches_whole(6)));
        let (count, bar) = (2, Bar::No4);
        let bars = read.bars.map(|bars| bars.value);
        assert_eq!(bars, Some(EdgeBars { count, bar }));
        assert_eq!(read.sort, EdgeSort::Thickened);
    }

    #[test]
    fn says_what_is_missing_and_what_is_said_twice() {
        #[track_caller]
        fn case(text: &str, code: &str) {
            assert_eq!(said(text).map_err(|error| error.code), Err(code), "{text}");
        }
        case("all open", "bad-thickened");
        case("all, 12 in wide", "bad-thickened");
        case("12 in wide, 12 in deep", "bad-thickened");
        case("all, 12 wide, 12 in deep", "length-without-unit");
        let once = "all, 12 in wide, 12 in deep, taper 6 in, 2 no. 4, turndown";
        assert!(said(once).is_ok());
        for twice in [
            "30 in wide",
            "20 in deep",
            "taper 6 in",
            "3 no. 5",
            "turndown",
            "north",
        ] {
            case(&format!("{once}, {twice}"), "said-twice");
        }
        refused::<EdgeBars>("bad-edge-bars", &["no. 4", "0 no. 4", "some no. 4"]);
        assert!("2 no. 99".parse::<EdgeBars>().is_err());
    }
}
