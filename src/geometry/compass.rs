//! Ways across the site: the four a side looks or a surface falls, and the eight a leg goes.

use std::fmt;
use std::str::FromStr;

use super::point::Point;
use crate::values::{Length, Unreadable};

/// The four ways a fall or an edge is named by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Compass {
    North,
    East,
    South,
    West,
}

/// Which way a leg goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Direction {
    North,
    NorthEast,
    East,
    SouthEast,
    South,
    SouthWest,
    West,
    NorthWest,
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
        let mut sides = Self::ALL.into_iter();
        sides
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

impl From<Compass> for Direction {
    fn from(compass: Compass) -> Self {
        match compass {
            Compass::North => Self::North,
            Compass::East => Self::East,
            Compass::South => Self::South,
            Compass::West => Self::West,
        }
    }
}

impl Direction {
    /// From east toward north, as angles are counted.
    const ALL: [(&'static str, &'static str, Self); 8] = [
        ("east", "e", Self::East),
        ("northeast", "ne", Self::NorthEast),
        ("north", "n", Self::North),
        ("northwest", "nw", Self::NorthWest),
        ("west", "w", Self::West),
        ("southwest", "sw", Self::SouthWest),
        ("south", "s", Self::South),
        ("southeast", "se", Self::SouthEast),
    ];

    /// Eighths of a degree from east toward north.
    pub(super) fn eighths(self) -> i32 {
        let turns = (0..).zip(Self::ALL).find(|(_, (.., one))| *one == self);
        360 * turns.expect("every direction is listed").0
    }

    /// The step east and north of a leg, diagonals rounded to a nanometre once.
    pub fn step(self, length: Length) -> Point {
        let straight = length.as_nanometres();
        let slant = diagonal(straight);
        match self {
            Self::North => Point::new(0, straight),
            Self::NorthEast => Point::new(slant, slant),
            Self::East => Point::new(straight, 0),
            Self::SouthEast => Point::new(slant, -slant),
            Self::South => Point::new(0, -straight),
            Self::SouthWest => Point::new(-slant, -slant),
            Self::West => Point::new(-straight, 0),
            Self::NorthWest => Point::new(-slant, slant),
        }
    }
}

/// `length` / √2 to the nearest whole nanometre, by integer square root.
fn diagonal(length: i64) -> i64 {
    let doubled = 2 * i128::from(length) * i128::from(length);
    let floor = (doubled / 4).isqrt();
    // The root is at least floor + 1/2 exactly when its square is.
    let up = (2 * floor + 1).pow(2) <= doubled;
    i64::try_from(floor + i128::from(up)).expect("shorter than the leg")
}

impl FromStr for Direction {
    type Err = Unreadable;

    /// Reads `north`, `north-east`, `northeast`, `NE` and the like.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let plain: String = text
            .chars()
            .filter(|c| !c.is_whitespace() && *c != '-')
            .flat_map(char::to_lowercase)
            .collect();
        let known = Self::ALL
            .iter()
            .find(|(word, short, _)| plain == *word || plain == *short);
        known.map(|(.., direction)| *direction).ok_or_else(|| {
            Unreadable::new(
                "bad-direction",
                format!("`{text}` is not a direction"),
                "write north, northeast, east, southeast, south, southwest, west or northwest",
            )
        })
    }
}

impl fmt::Display for Direction {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = Self::ALL.iter().find(|(.., one)| one == self);
        out.pad(word.expect("every direction has its word").0)
    }
}
