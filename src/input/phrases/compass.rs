//! `north`, `east`, `south`, `west`: the sides a fall or an edge is named by.

use std::str::FromStr;

use crate::geometry::Facing;
use crate::reading::words;
use crate::reading::written::written;
use crate::values::Unreadable;

words! {
    /// The four sides a fall or an edge may be named by.
    pub enum Compass {
        North "north";
        East "east";
        South "south";
        West "west";
    }
}

impl Compass {
    /// Whether a side that looks there is meant.
    pub const fn looks(self, facing: Facing) -> bool {
        matches!(
            (self, facing),
            (Self::North, Facing::North)
                | (Self::East, Facing::East)
                | (Self::South, Facing::South)
                | (Self::West, Facing::West)
        )
    }

    pub const fn opposite(self) -> Self {
        match self {
            Self::North => Self::South,
            Self::East => Self::West,
            Self::South => Self::North,
            Self::West => Self::East,
        }
    }
}

impl FromStr for Compass {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        Self::ALL
            .into_iter()
            .find(|side| side.name() == text.trim())
            .ok_or_else(|| {
                Unreadable::new(
                    "bad-direction",
                    format!("`{text}` is not a side"),
                    "write `north`, `east`, `south` or `west`",
                )
            })
    }
}

written! { Compass = "side"; }
