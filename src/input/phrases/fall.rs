//! `1/4 in per ft south`: how steeply a surface sheds water, and where to.

use std::str::FromStr;

use crate::geometry::Facing;
use crate::values::{Length, Unreadable};

/// The four sides a fall or an edge may be named by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Compass {
    North,
    East,
    South,
    West,
}

impl Compass {
    pub const ALL: [Self; 4] = [Self::North, Self::East, Self::South, Self::West];

    pub const fn name(self) -> &'static str {
        match self {
            Self::North => "north",
            Self::East => "east",
            Self::South => "south",
            Self::West => "west",
        }
    }

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

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FallPhrase {
    Level,
    /// Rise for each foot of run.
    PerFoot {
        rise: Length,
        toward: Option<Compass>,
    },
}

impl FromStr for FallPhrase {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        if text.trim() == "level" {
            return Ok(Self::Level);
        }
        let refuse = || {
            Unreadable::new(
                "bad-fall",
                format!("cannot read `{text}` as a fall"),
                "write `1/4 in per ft`, `1/4 in per ft south` or `level`",
            )
        };
        let (rise, rest) = text.split_once(" per ft").ok_or_else(refuse)?;
        let toward = match rest.trim() {
            "" => None,
            side => Some(side.parse().map_err(|_| refuse())?),
        };
        Ok(Self::PerFoot {
            rise: rise.parse()?,
            toward,
        })
    }
}
