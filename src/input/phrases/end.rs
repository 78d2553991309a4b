//! `1 ft from west end`: a place along an edge, from one of its two ends.

use super::reader::{Said, phrase};
use crate::geometry::Compass;
use crate::values::{Length, Unreadable};

/// Where something lies along an edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FromEnd {
    pub offset: Length,
    pub end: Compass,
}

impl FromEnd {
    pub(super) fn said(said: Said<'_>) -> Result<Self, Unreadable> {
        let end = said.need(said.before(" end"))?;
        let (offset, end) = if let Some(end) = end.after("from ") {
            (Length::ZERO, end)
        } else {
            let (offset, end) = end.halves(" from ")?;
            (offset.read()?, end)
        };
        let end = end.without("the ").read()?;
        Ok(Self { offset, end })
    }

    /// The same, unless this edge has no such end.
    pub fn of(self, edge: Compass, code: &'static str) -> Result<Self, Unreadable> {
        if self.end != edge && self.end != edge.opposite() {
            return Ok(self);
        }
        Err(Unreadable::new(
            code,
            format!("the {} edge has no {} end", edge.name(), self.end.name()),
            "name one of the two ends of that edge",
        ))
    }
}

phrase!(
    FromEnd,
    "position",
    "bad-steps",
    "a place along the edge",
    "write, for example, `1 ft from west end`",
    FromEnd::said
);
