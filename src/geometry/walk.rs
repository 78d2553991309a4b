//! An outline as it is walked with the tape: legs, one after another.

use std::fmt;
use std::str::FromStr;

use super::{Point, Side};
use crate::values::{Length, Unreadable};

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

/// One leg of the walk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Leg {
    pub direction: Direction,
    pub length: Length,
    /// Rise at the middle: positive outward from the slab, negative inward, zero straight.
    pub bulge: Length,
}

/// Why legs are not an outline. Legs are counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WalkError {
    /// Under three legs, or under two when one of them is bulged.
    TooFew,
    /// The walk ends this far east and north of where it began (negative: west, south).
    NotClosed { east: Length, north: Length },
    /// Two legs cross or touch, or the second goes back over the first.
    Crosses { first: usize, second: usize },
    /// A bulge rises over half its leg, more than a half circle.
    BulgeTooDeep { leg: usize },
    /// All legs lie on one line.
    NoArea,
}

/// A tape error this large is spread over the legs; a larger one is refused.
pub const CLOSING_ERROR: Length = Length::sixty_fourths(32);

impl Direction {
    const ALL: [(&'static str, &'static str, Self); 8] = [
        ("north", "n", Self::North),
        ("northeast", "ne", Self::NorthEast),
        ("east", "e", Self::East),
        ("southeast", "se", Self::SouthEast),
        ("south", "s", Self::South),
        ("southwest", "sw", Self::SouthWest),
        ("west", "w", Self::West),
        ("northwest", "nw", Self::NorthWest),
    ];

    /// The step east and north of a leg, diagonals rounded to a nanometre once.
    fn step(self, length: Length) -> Point {
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
        Self::ALL
            .iter()
            .find(|(word, short, _)| plain == *word || plain == *short)
            .map(|(_, _, direction)| *direction)
            .ok_or_else(|| {
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
        let word = Self::ALL.iter().find(|(_, _, d)| d == self);
        out.pad(word.expect("every direction has its word").0)
    }
}

impl fmt::Display for WalkError {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooFew => write!(out, "an outline needs at least three legs"),
            Self::NotClosed { east, north } => {
                let way = |l: Length, plus: &str, minus: &str| {
                    let word = if l < Length::ZERO { minus } else { plus };
                    format!("{} {word}", l.abs())
                };
                let parts = [
                    (*east, way(*east, "east", "west")),
                    (*north, way(*north, "north", "south")),
                ];
                let off: Vec<String> = parts
                    .into_iter()
                    .filter(|(l, _)| *l != Length::ZERO)
                    .map(|(_, text)| text)
                    .collect();
                write!(out, "the walk ends {} of where it began", off.join(" and "))
            }
            Self::Crosses { first, second } => {
                write!(out, "legs {} and {} cross or touch", first + 1, second + 1)
            }
            Self::BulgeTooDeep { leg } => {
                write!(
                    out,
                    "the bulge of leg {} is more than half its length",
                    leg + 1
                )
            }
            Self::NoArea => write!(out, "all legs lie on one line"),
        }
    }
}

/// The sides in walking order, closed, from (0, 0); legs of no length are left out.
pub(super) fn closed(legs: &[Leg]) -> Result<Vec<Side>, WalkError> {
    let real: Vec<(usize, &Leg)> = legs
        .iter()
        .enumerate()
        .filter(|(_, leg)| leg.length != Length::ZERO)
        .collect();
    let bulged = real.iter().any(|(_, leg)| leg.bulge != Length::ZERO);
    if real.len() < 2 || (real.len() == 2 && !bulged) {
        return Err(WalkError::TooFew);
    }
    for (leg, l) in &real {
        if l.length < l.bulge.abs() * 2 {
            return Err(WalkError::BulgeTooDeep { leg: *leg });
        }
    }
    let steps: Vec<Point> = real
        .iter()
        .map(|(_, l)| l.direction.step(l.length))
        .collect();
    let end = steps.iter().fold(Point::default(), |at, step| at + *step);
    let allowed = i128::from(CLOSING_ERROR.as_nanometres());
    if allowed * allowed < Point::default().distance_squared(end) {
        return Err(WalkError::NotClosed {
            east: Length::nanometres(end.x),
            north: Length::nanometres(end.y),
        });
    }
    let xs = spread(&steps.iter().map(|s| s.x).collect::<Vec<_>>(), end.x);
    let ys = spread(&steps.iter().map(|s| s.y).collect::<Vec<_>>(), end.y);
    let corners: Vec<Point> = xs
        .into_iter()
        .zip(ys)
        .map(|(x, y)| Point::new(x, y))
        .collect();
    let froms = std::iter::once(Point::default()).chain(corners.iter().copied());
    Ok(real
        .iter()
        .zip(froms.zip(&corners))
        .map(|((leg, l), (from, &to))| Side {
            from,
            to,
            bulge: l.bulge,
            leg: *leg,
        })
        .collect())
}

/// Running sums of `steps`, with `error` taken out in proportion to their size.
///
/// East and north are spread apart, so a leg due east stays due east.
fn spread(steps: &[i64], error: i64) -> Vec<i64> {
    let walked: i128 = steps.iter().map(|s| i128::from(s.abs())).sum();
    let (mut at, mut so_far) = (0, 0_i128);
    steps
        .iter()
        .map(|step| {
            at += step;
            so_far += i128::from(step.abs());
            if error == 0 {
                return at;
            }
            let share = (2 * i128::from(error) * so_far + walked).div_euclid(2 * walked);
            at - i64::try_from(share).expect("a share is not over the whole")
        })
        .collect()
}
