//! `all open`, `north and south`, `1 and 3`, `15 ft`, `arc`: which edges of a slab are meant.

use std::fmt;

use super::reader::{Said, phrase};
use crate::geometry::{Compass, Direction};
use crate::reading::words;
use crate::reading::written::written;
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
    Looking(Direction),
    /// Number of a side as walked, from 1.
    Number(usize),
    /// As the tape shows it, along a curve too.
    Long(Length),
    Called(ShapeSide),
}

words! {
    /// What a shape calls one of its sides.
    pub enum ShapeSide {
        Arc "arc";
        OuterArc "outer arc";
        InnerArc "inner arc";
        FlatSide "flat side";
        Base "base";
        Height "height";
        LongSide "long side";
        EastEnd "east end";
        WestEnd "west end";
        Start "start";
        End "end";
        Left "left";
        Right "right";
    }
}

const HELP: &str = "write `all`, `all open`, or sides such as `north and south`, `15 ft` or `arc`; a walked outline's sides have numbers too, such as `1 and 3`";

phrase!(EdgesPhrase, "edges", "bad-edges", "edges", HELP, |said| {
    said.need(EdgesPhrase::said(&said.parts(&[","]))?)
});

phrase!(EdgeName, "edge", "bad-edges", "edges", HELP, |said| {
    let number = said.without("side ").count(1..=u32::MAX);
    if let Some(number) = number.and_then(|number| usize::try_from(number).ok()) {
        return Ok(EdgeName::Number(number));
    }
    let side = [" side", " edge"]
        .into_iter()
        .find_map(|last| said.before(last));
    let side = side.unwrap_or(said);
    let called = ShapeSide::ALL
        .into_iter()
        .find(|one| said.is(one.name()) || side.is(one.name()));
    if let Some(called) = called {
        return Ok(EdgeName::Called(called));
    }
    let looking = side.read().ok().map(EdgeName::Looking);
    let long = || side.positive().ok().map(EdgeName::Long);
    said.need(looking.or_else(long))
});

impl EdgeName {
    /// Whether it means all sides of one edge of a path.
    pub fn is_whole_edge(self) -> bool {
        matches!(self, Self::Called(ShapeSide::Left | ShapeSide::Right))
    }
}

impl fmt::Display for EdgeName {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Looking(way) => write!(out, "{way}"),
            Self::Number(number) => write!(out, "side {number}"),
            Self::Long(length) => write!(out, "{length}"),
            Self::Called(side) => write!(out, "{}", side.name()),
        }
    }
}

written! { Compass = "side"; }

impl EdgesPhrase {
    /// Reads the parts of a phrase that name edges; none when none does.
    pub(in crate::input) fn said(parts: &[Said<'_>]) -> Result<Option<Self>, Unreadable> {
        // An `and` that joins nothing stays a word, and is none: an edge was forgotten.
        let parts = parts.iter().map(|part| part.without("and "));
        let parts = parts.flat_map(|part| part.parts(&[" and "]));
        let words = parts.flat_map(|part| match part.read::<EdgeName>() {
            // `15 ft` and `inner arc` are one name each.
            Ok(_) => vec![part],
            Err(_) => part.parts(&[" "]),
        });
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
        let south = vec![EdgeName::Looking(Direction::South)];
        let long = EdgeName::Long(Length::feet_whole(15));
        case("all", EdgesPhrase::All);
        case("all open", EdgesPhrase::AllOpen);
        case("all open edges", EdgesPhrase::AllOpen);
        case("1 and 3", EdgesPhrase::Named(numbered.clone()));
        case("south edge", EdgesPhrase::Named(south));
        case("sides 1 3", EdgesPhrase::Named(numbered.clone()));
        let both = vec![long, EdgeName::Called(ShapeSide::InnerArc)];
        case("15 ft and inner arc", EdgesPhrase::Named(both));
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
