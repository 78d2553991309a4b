//! `patio, west edge, 2 ft from north end`: where a slab touches or stands on another.

use super::FromEnd;
use super::reader::phrase;
use crate::geometry::Compass;
use crate::values::Length;

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BesidePhrase {
    pub slab: String,
    pub edge: Compass,
    /// Distance of the nearer end from the named end of that edge.
    pub offset: Length,
    pub from: Compass,
}

phrase!(
    BesidePhrase,
    "position",
    "bad-position",
    "a position",
    "write slab, edge and end, for example `patio, west edge, 2 ft from north end`",
    |said| {
        let [slab, edge, end] = said.parts(&[","])[..] else {
            return Err(said.refuse());
        };
        let edge: Compass = said.need(edge.before(" edge"))?.read()?;
        let end = FromEnd::said(end)?;
        let FromEnd { offset, end: from } = end.of(edge, "bad-position")?;
        Ok(BesidePhrase {
            slab: slab.text().to_owned(),
            edge,
            offset,
            from,
        })
    }
);
