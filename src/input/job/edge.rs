//! What stands at the edges of a slab.

use std::str::FromStr;

use crate::values::{Length, Unreadable};

/// What is beyond an edge; it decides forms, strips and joints.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum EdgeKind {
    /// A form, no strip.
    Open,
    /// An isolation strip, no form.
    House,
    /// An isolation strip, no form.
    Existing,
    /// An isolation strip, no form.
    Curb,
    /// Another slab of this job, with a strip between and no form.
    Isolated,
    /// Another slab of the same pour: neither form nor strip.
    Joined,
    /// The end of a pour: a form, and a construction joint.
    Bulkhead,
}

impl EdgeKind {
    pub const ALL: [(Self, &'static str); 7] = [
        (Self::Open, "open"),
        (Self::House, "house"),
        (Self::Existing, "existing concrete"),
        (Self::Curb, "curb"),
        (Self::Isolated, "isolated"),
        (Self::Joined, "joined"),
        (Self::Bulkhead, "bulkhead"),
    ];

    pub const fn has_form(self) -> bool {
        matches!(self, Self::Open | Self::Bulkhead)
    }

    pub const fn has_strip(self) -> bool {
        matches!(
            self,
            Self::House | Self::Existing | Self::Curb | Self::Isolated
        )
    }
}

impl FromStr for EdgeKind {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let text = text.strip_prefix("against ").unwrap_or(text);
        let text = text.strip_prefix("the ").unwrap_or(text);
        Self::ALL
            .into_iter()
            .find(|(_, name)| *name == text)
            .map(|(kind, _)| kind)
            .ok_or_else(|| {
                let names: Vec<&str> = Self::ALL.iter().map(|(_, name)| *name).collect();
                Unreadable::new(
                    "unknown-edge",
                    format!("`{text}` is not a kind of edge"),
                    format!("write one of {}", names.join(", ")),
                )
            })
    }
}

/// A stretch of one side of the outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct EdgePart {
    /// Number of the side in `Outline::sides`.
    pub side: usize,
    pub kind: EdgeKind,
    /// Along the side from its first corner; whole sides when `None`.
    pub stretch: Option<(Length, Length)>,
}
