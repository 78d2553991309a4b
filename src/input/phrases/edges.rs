//! `all open`, `north and south`, `1 and 3`: which edges of a slab are meant.

use super::reader::{Said, phrase};
use crate::geometry::Compass;
use crate::reading::written::written;
use crate::values::Unreadable;

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

const HELP: &str = "write `all`, `all open`, or sides such as `north and south`; a walked outline's sides have numbers too, such as `1 and 3`";

phrase!(EdgesPhrase, "edges", "bad-edges", "edges", HELP, |said| {
    said.need(EdgesPhrase::said(&said.parts(&[","]))?)
});

phrase!(EdgeName, "edge", "bad-edges", "edges", HELP, |said| {
    let number = said.count(1..=u32::MAX);
    let number = number.and_then(|number| usize::try_from(number).ok());
    let side = || said.read().ok().map(EdgeName::Looking);
    said.need(number.map(EdgeName::Number).or_else(side))
});

written! { Compass = "side"; }

impl EdgesPhrase {
    /// Reads the parts of a phrase that name edges; none when none does.
    pub(in crate::input) fn said(parts: &[Said<'_>]) -> Result<Option<Self>, Unreadable> {
        // An `and` that joins nothing stays a word, and is none: an edge was forgotten.
        let parts = parts.iter().map(|part| part.without("and "));
        let words = parts.flat_map(|part| part.parts(&[" and ", " "]));
        let fill = ["", "side", "sides", "edge", "edges"];
        let mut edges = None;
        for word in words.filter(|word| !fill.contains(&word.text())) {
            edges = Some(match (word.text(), edges) {
                ("all", None) => Self::All,
                ("open", None | Some(Self::All)) => Self::AllOpen,
                ("all" | "open", Some(_)) => return Err(word.twice("an edge")),
                (_, edges) => {
                    let name = word.read().map_err(|unreadable| word.at(unreadable))?;
                    let mut names = match edges {
                        None => Vec::new(),
                        Some(Self::Named(names)) if !names.contains(&name) => names,
                        Some(_) => return Err(word.twice("an edge")),
                    };
                    names.push(name);
                    Self::Named(names)
                }
            });
        }
        Ok(edges)
    }
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
        refused::<EdgesPhrase>("bad-edges", &["sides", "all garden", "north and"]);
        let twice = [
            "north, south and north",
            "1 and 1",
            "all and 1",
            "north, all",
        ];
        refused::<EdgesPhrase>("said-twice", &twice);
    }
}
