//! `all open`, `north and south`, `1 and 3`: which edges of a slab are meant.

use std::str::FromStr;

use crate::geometry::Compass;
use crate::reading::written::written;
use crate::values::{Unreadable, number};

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
            names if names.is_empty() => Err(refuse(text)),
            names => Ok(Self::Named(names)),
        }
    }
}

impl FromStr for EdgeName {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let number = number::whole(text).filter(|number| *number != 0);
        let number = number.and_then(|number| usize::try_from(number).ok());
        let side = || text.parse().map(Self::Looking);
        number
            .map_or_else(side, |number| Ok(Self::Number(number)))
            .map_err(|_| refuse(text))
    }
}

written! {
    Compass = "side";
    EdgesPhrase = "edges";
    EdgeName = "edge";
}

fn refuse(text: &str) -> Unreadable {
    Unreadable::new(
        "bad-edges",
        format!("cannot read `{text}` as edges"),
        "write `all`, `all open`, or sides such as `north and south`; a walked outline's sides have numbers too, such as `1 and 3`",
    )
}

#[cfg(test)]
mod tests {
    use super::super::reader::tests::refused;
    use super::*;

    #[test]
    fn reads_the_edges_however_they_are_named() {
        #[track_caller]
        fn case(text: &str, wanted: EdgesPhrase) {
            assert_eq!(text.parse(), Ok(wanted), "{text}");
        }
        let numbered = [1, 3].map(EdgeName::Number).to_vec();
        let south = vec![EdgeName::Looking(Compass::South)];
        case("all", EdgesPhrase::All);
        case("all open", EdgesPhrase::AllOpen);
        case("all open edges", EdgesPhrase::AllOpen);
        case("1 and 3", EdgesPhrase::Named(numbered));
        case("south edge", EdgesPhrase::Named(south));
        refused::<EdgesPhrase>("bad-edges", &["", "up", "0", "northish"]);
    }
}
