//! `patio, west edge, 2 ft from north end`: where a slab touches or stands on another.

use std::str::FromStr;

use crate::geometry::Compass;
use crate::values::{Length, Unreadable};

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BesidePhrase {
    pub slab: String,
    pub edge: Compass,
    /// Distance of the nearer end from the named end of that edge.
    pub offset: Length,
    pub from: Compass,
}

impl FromStr for BesidePhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-position",
                format!("cannot read `{text}` as a position"),
                "write slab, edge and end, for example `patio, west edge, 2 ft from north end`",
            )
        };
        let parts: Vec<&str> = text.split(',').map(str::trim).collect();
        let [slab, edge, end] = parts[..] else {
            return Err(refuse());
        };
        let edge: Compass = edge.strip_suffix(" edge").ok_or_else(refuse)?.parse()?;
        let end = end.strip_suffix(" end").ok_or_else(refuse)?;
        let (offset, from) = if let Some(from) = end.strip_prefix("from ") {
            (Length::ZERO, from)
        } else {
            let (offset, from) = end.split_once(" from ").ok_or_else(refuse)?;
            (offset.parse()?, from)
        };
        let from: Compass = from.parse()?;
        if from == edge || from == edge.opposite() {
            return Err(Unreadable::new(
                "bad-position",
                format!("the {} edge has no {} end", edge.name(), from.name()),
                "name one of the two ends of that edge",
            ));
        }
        Ok(Self {
            slab: slab.to_owned(),
            edge,
            offset,
            from,
        })
    }
}
