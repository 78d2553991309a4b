//! `all open, 12 in wide, 12 in deep, 2 no. 4`: which edges of a slab go deeper, and how far.

use std::str::FromStr;

use crate::geometry::Compass;
use crate::reading::words;
use crate::tables::bars::Bar;
use crate::values::{Length, Unreadable};

/// Which edges are meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EdgesPhrase {
    All,
    AllOpen,
    Named(Vec<EdgeName>),
}

/// One side, as the owner points at it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeName {
    Looking(Compass),
    /// Number of a side as walked, from 1.
    Number(usize),
}

/// How many bars run along the edge, and which.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EdgeBars {
    pub count: u32,
    pub bar: Bar,
}

words! {
    /// A thickened edge, or a turned-down one: the same concrete, said otherwise.
    pub enum EdgeSort("unknown-word", "`kind` is not `{}`", choose) {
        Thickened "thickened";
        Turndown "turndown";
    }
}

impl FromStr for EdgesPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let text = text.strip_suffix(" edges").unwrap_or(text);
        match text {
            "all" => return Ok(Self::All),
            "open" | "all open" => return Ok(Self::AllOpen),
            _ => {}
        }
        let names = text.split([',', ' ']).filter(|word| !word.is_empty());
        let names: Result<Vec<EdgeName>, Unreadable> = names
            .filter(|word| !matches!(*word, "and" | "side" | "sides" | "edge"))
            .map(str::parse)
            .collect();
        match names? {
            names if names.is_empty() => Err(refuse_edges(text)),
            names => Ok(Self::Named(names)),
        }
    }
}

impl FromStr for EdgeName {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        if let Ok(number) = text.parse::<usize>() {
            return if number == 0 {
                Err(refuse_edges(text))
            } else {
                Ok(Self::Number(number))
            };
        }
        let side = text.parse().map(Self::Looking);
        side.map_err(|_| refuse_edges(text))
    }
}

fn refuse_edges(text: &str) -> Unreadable {
    Unreadable::new(
        "bad-edges",
        format!("cannot read `{text}` as edges"),
        "write `all`, `all open`, or sides such as `north and south`; a walked outline's sides have numbers too, such as `1 and 3`",
    )
}

impl FromStr for EdgeBars {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-edge-bars",
                format!("cannot read `{text}` as bars along an edge"),
                "write how many and which, for example `2 no. 4`",
            )
        };
        let (count, bar) = text.trim().split_once(' ').ok_or_else(refuse)?;
        let count: u32 = count.parse().map_err(|_| refuse())?;
        if count == 0 || 12 < count {
            return Err(refuse());
        }
        let bar = bar.trim();
        let bar = bar.strip_suffix(" bars").unwrap_or(bar);
        Ok(Self {
            count,
            bar: bar.parse()?,
        })
    }
}

/// The whole of it in one line; `None` is an explicit `none`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ThickenedPhrase {
    pub sort: EdgeSort,
    pub edges: EdgesPhrase,
    pub width: Length,
    pub depth: Length,
    pub taper: Option<Length>,
    pub bars: Option<EdgeBars>,
}

impl FromStr for ThickenedPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let (mut sort, mut edges) = (EdgeSort::Thickened, Vec::new());
        let (mut width, mut depth, mut taper, mut bars) = (None, None, None, None);
        for part in text.split(',').map(str::trim) {
            if part == "turndown" {
                sort = EdgeSort::Turndown;
            } else if let Some(wide) = part.strip_suffix(" wide") {
                width = Some(super::positive(wide)?);
            } else if let Some(deep) = part.strip_suffix(" deep") {
                depth = Some(super::positive(deep)?);
            } else if let Some(run) = part.strip_prefix("taper ") {
                taper = Some(super::positive(run)?);
            } else if part.contains("no.") || part.ends_with(" bars") {
                bars = Some(part.parse()?);
            } else {
                edges.push(part);
            }
        }
        let (Some(width), Some(depth), false) = (width, depth, edges.is_empty()) else {
            return Err(Unreadable::new(
                "bad-thickened",
                format!("cannot read `{text}` as a thickened edge"),
                "write the edges, the width and the whole depth, for example `all open, 12 in wide, 12 in deep`; `taper 12 in` and `2 no. 4` may follow",
            ));
        };
        Ok(Self {
            sort,
            edges: edges.join(" ").parse()?,
            width,
            depth,
            taper,
            bars,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_a_thickened_edge_in_one_line() {
        let read: ThickenedPhrase = "north and east, 12 in wide, 16 in deep, taper 6 in, 2 no. 4"
            .parse()
            .unwrap();
        let edges = [Compass::North, Compass::East].map(EdgeName::Looking);
        assert_eq!(read.edges, EdgesPhrase::Named(edges.to_vec()));
        assert_eq!(read.width, Length::inches_whole(12));
        assert_eq!(read.depth, Length::inches_whole(16));
        assert_eq!(read.taper, Some(Length::inches_whole(6)));
        let bars = EdgeBars {
            count: 2,
            bar: Bar::No4,
        };
        assert_eq!(read.bars, Some(bars));
        assert_eq!(read.sort, EdgeSort::Thickened);
    }

    #[test]
    fn reads_the_edges_however_they_are_named() {
        #[track_caller]
        fn case(text: &str, wanted: EdgesPhrase) {
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        case("all", EdgesPhrase::All);
        case("all open", EdgesPhrase::AllOpen);
        case("all open edges", EdgesPhrase::AllOpen);
        case(
            "1 and 3",
            EdgesPhrase::Named([1, 3].map(EdgeName::Number).to_vec()),
        );
        case(
            "south edge",
            EdgesPhrase::Named(vec![EdgeName::Looking(Compass::South)]),
        );
        for text in ["", "up", "0", "northish"] {
            assert!(text.parse::<EdgesPhrase>().is_err(), "{text}");
        }
    }

    #[test]
    fn says_what_is_missing() {
        for text in [
            "all open",
            "all, 12 in wide",
            "12 in wide, 12 in deep",
            "all, 12 wide, 12 in deep",
        ] {
            assert!(text.parse::<ThickenedPhrase>().is_err(), "{text}");
        }
        for text in ["no. 4", "0 no. 4", "2 no. 99", "some no. 4"] {
            assert!(text.parse::<EdgeBars>().is_err(), "{text}");
        }
    }
}
