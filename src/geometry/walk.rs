//! An outline as it is walked with the tape: legs, one after another.

use std::fmt;

use super::compass::Direction;
use super::point::Point;
use super::side::Side;
use crate::values::Length;

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

/// The largest closing error that is spread over the legs of a walk this long; a larger one is refused.
///
/// 1/200 of the way round, but at least 1/2 in and at most 6 in: common practice, no source.
pub fn closing_limit(walked: Length) -> Length {
    const LEAST: Length = Length::sixty_fourths(32);
    const MOST: Length = Length::inches_whole(6);
    Length::nanometres(walked.as_nanometres() / 200).clamp(LEAST, MOST)
}

/// How far the walk ended from where it began, before that was spread over the legs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ClosingError {
    /// Negative: west.
    pub east: Length,
    /// Negative: south.
    pub north: Length,
}

impl ClosingError {
    /// The straight way from the last corner to the first, to a nanometre.
    pub fn distance(self) -> Length {
        let end = Point::new(self.east.as_nanometres(), self.north.as_nanometres());
        let squared = Point::default().distance_squared(end);
        Length::nanometres(i64::try_from(squared.isqrt()).expect("within the closing limit"))
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

/// The sides in walking order, closed, from (0, 0), and the error that was spread over them.
///
/// Legs of no length are left out. With `back` the last side goes straight back to
/// the start, bulged by that much, and there is no error.
pub(super) fn closed(
    legs: &[Leg],
    back: Option<Length>,
) -> Result<(Vec<Side>, ClosingError), WalkError> {
    let real: Vec<(usize, &Leg)> = legs
        .iter()
        .enumerate()
        .filter(|(_, leg)| leg.length != Length::ZERO)
        .collect();
    let bulged = real.iter().any(|(_, leg)| leg.bulge != Length::ZERO)
        || back.is_some_and(|bulge| bulge != Length::ZERO);
    let many = real.len() + usize::from(back.is_some());
    if many < 2 || (many == 2 && !bulged) {
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
    let error = if back.is_some() {
        Point::default()
    } else {
        end
    };
    let walked: i64 = real.iter().map(|(_, l)| l.length.as_nanometres()).sum();
    let allowed = i128::from(closing_limit(Length::nanometres(walked)).as_nanometres());
    let error_at = ClosingError {
        east: Length::nanometres(error.x),
        north: Length::nanometres(error.y),
    };
    if allowed * allowed < Point::default().distance_squared(error) {
        let ClosingError { east, north } = error_at;
        return Err(WalkError::NotClosed { east, north });
    }
    let xs = spread(&steps.iter().map(|s| s.x).collect::<Vec<_>>(), error.x);
    let ys = spread(&steps.iter().map(|s| s.y).collect::<Vec<_>>(), error.y);
    let corners: Vec<Point> = xs
        .into_iter()
        .zip(ys)
        .map(|(x, y)| Point::new(x, y))
        .collect();
    let froms = std::iter::once(Point::default()).chain(corners.iter().copied());
    let mut sides: Vec<Side> = real
        .iter()
        .zip(froms.zip(&corners))
        .map(|((leg, l), (from, &to))| Side {
            from,
            to,
            bulge: l.bulge,
            leg: *leg,
        })
        .collect();
    if let Some(bulge) = back
        && end != Point::default()
    {
        let last = Side {
            from: end,
            to: Point::default(),
            bulge,
            leg: legs.len(),
        };
        if last.chord() / rust_decimal::Decimal::TWO < bulge.abs().feet() {
            return Err(WalkError::BulgeTooDeep { leg: last.leg });
        }
        sides.push(last);
    }
    Ok((sides, error_at))
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
