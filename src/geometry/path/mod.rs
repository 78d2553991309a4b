//! A path of even width along a middle line: legs one after another, sharp, rounded or bowed.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::angle;
use super::compass::Direction;
use super::outline::Outline;
use super::point::Point;
use super::side::Side;
use super::walk::WalkError;
use crate::values::{Length, rounding};

/// One leg of the middle line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PathLeg {
    pub direction: Direction,
    pub length: Length,
    /// Rise at its middle: positive to the left of the way, negative to the right, zero straight.
    pub bulge: Length,
    /// Radius of the middle line where it bends into the next leg; zero where it bends sharply.
    pub bend: Length,
}

/// Why legs and a width are no path. Legs are counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PathError {
    /// The next leg goes straight back, or this is the last and bends all the same.
    NoBend { leg: usize },
    /// The bend begins before its leg does.
    NoRoom { leg: usize },
    /// The inner edge of a bend or a bow would turn over.
    TooTight { leg: usize },
    /// A bow does not run on into its neighbor.
    NotSmooth { leg: usize },
    /// Both edges enclose nothing, or run into each other.
    Outline(WalkError),
}

type Way = (Decimal, Decimal);

/// The sine of one degree: a bow may meet its neighbor at that angle, which no eye sees.
const SMOOTH: Decimal = dec!(0.01745);

/// A straight stretch of the middle line, or an arc.
struct Piece {
    leg: usize,
    from: Point,
    to: Point,
    start: Way,
    end: Way,
    /// In nanometres, positive to the left; with its radius none for a straight stretch.
    arc: Option<(Decimal, Decimal)>,
    is_bowed: bool,
}

impl Outline {
    /// The outline of a path: its right edge, its end, its left edge on the way back, its start.
    ///
    /// With as many pieces as legs and bends, the right edge has the first legs of the outline, as
    /// many as pieces; then come the end, the left edge from its end, and the start.
    ///
    /// # Errors
    /// When a bend has no room or the edges run into each other.
    pub fn path(legs: &[PathLeg], width: Length) -> Result<Self, PathError> {
        let pieces = pieces(legs)?;
        let left = width.half();
        let (left, right) = (left.as_nanometres(), (width - left).as_nanometres());
        let corners = corners(&pieces, left, right)?;
        let many = pieces.len();
        let mut sides = Vec::new();
        let mut edge = |number: usize, leg: usize, is_left: bool| {
            let piece = &pieces[number];
            let (low, high) = (&corners[number], &corners[number + 1]);
            let (from, to) = if is_left {
                (high.0, low.0)
            } else {
                (low.1, high.1)
            };
            let out = if is_left { left } else { -right };
            let bulge = match piece.arc {
                None => Length::ZERO,
                Some((rise, radius)) => {
                    // The arc lies around the same middle, so much nearer or farther.
                    let far = radius + Decimal::from(out * rise_sign(rise));
                    if far < Decimal::ZERO {
                        return Err(PathError::TooTight { leg: piece.leg });
                    }
                    let rise = whole(rise * far / radius);
                    Length::nanometres(if is_left { rise } else { -rise })
                }
            };
            sides.push(Side {
                from,
                to,
                bulge,
                leg,
            });
            Ok(())
        };
        for number in 0..many {
            edge(number, number, false)?;
        }
        for number in (0..many).rev() {
            edge(number, 2 * many - number, true)?;
        }
        let across = |from, to, leg| Side {
            from,
            to,
            bulge: Length::ZERO,
            leg,
        };
        sides.insert(many, across(corners[many].1, corners[many].0, many));
        sides.push(across(corners[0].0, corners[0].1, 2 * many + 1));
        sides.retain(|side| side.from != side.to);
        let leg = |side: usize| match side {
            side if side < many => pieces[side].leg,
            side if side == many => legs.len() - 1,
            side if side <= 2 * many => pieces[2 * many - side].leg,
            _ => 0,
        };
        let mut outline = Self::enclosed(sides).map_err(|error| {
            PathError::Outline(match error {
                WalkError::Crosses { first, second } => WalkError::Crosses {
                    first: leg(first).min(leg(second)),
                    second: leg(first).max(leg(second)),
                },
                error => error,
            })
        })?;
        outline.path = Some(many);
        Ok(outline)
    }
}

fn rise_sign(rise: Decimal) -> i64 {
    if rise < Decimal::ZERO { -1 } else { 1 }
}

fn whole(nanometres: Decimal) -> i64 {
    let whole = rounding::to_places(nanometres, 0);
    i64::try_from(whole).expect("lengths are limited on reading")
}

fn cross(a: Way, b: Way) -> Decimal {
    a.0 * b.1 - a.1 * b.0
}

fn dot(a: Way, b: Way) -> Decimal {
    a.0 * b.0 + a.1 * b.1
}

fn along(from: Point, way: Way, far: Decimal) -> Point {
    from + Point::new(whole(way.0 * far), whole(way.1 * far))
}

/// The middle line, each bend an arc that touches both its legs.
fn pieces(legs: &[PathLeg]) -> Result<Vec<Piece>, PathError> {
    let mut pieces = Vec::new();
    let mut here = Point::default();
    // How much of a leg the bend before it has taken.
    let mut taken = Decimal::ZERO;
    for (number, leg) in legs.iter().enumerate() {
        let way = angle::unit(leg.direction.eighths());
        let end = here + leg.direction.step(leg.length);
        let bend = match (leg.bend, legs.get(number + 1)) {
            (Length::ZERO, _) => None,
            (_, None) => return Err(PathError::NoBend { leg: number }),
            (radius, Some(next)) => Some((radius, next)),
        };
        if leg.bulge != Length::ZERO {
            if bend.is_some() || !taken.is_zero() {
                return Err(PathError::NotSmooth { leg: number });
            }
            pieces.push(bow(number, leg, way, here, end)?);
            here = end;
            continue;
        }
        let mut left = Decimal::from(leg.length.as_nanometres()) - taken;
        let mut curve = None;
        if let Some((radius, next)) = bend {
            let after = angle::unit(next.direction.eighths());
            let (turn, ahead) = (cross(way, after), Decimal::ONE + dot(way, after));
            if ahead < SMOOTH * SMOOTH || next.bulge != Length::ZERO {
                return Err(PathError::NoBend { leg: number });
            }
            if !turn.is_zero() {
                let far = Decimal::from(radius.as_nanometres());
                let tangent = far * turn.abs() / ahead;
                left -= tangent;
                let (from, to) = (along(end, way, -tangent), along(end, after, tangent));
                // Half of the turn has the cosine √((1 + cos) ÷ 2).
                let half = angle::root(ahead / Decimal::TWO);
                let rise = far * (Decimal::ONE - half);
                // A bend to the left stands out to the right.
                let rise = if turn < Decimal::ZERO { rise } else { -rise };
                curve = Some((from, to, after, rise, far, tangent));
            }
        }
        if left < -Decimal::TWO {
            return Err(PathError::NoRoom { leg: number });
        }
        let from = along(here, way, taken);
        let to = curve.map_or(end, |(from, ..)| from);
        if Decimal::TWO < left {
            pieces.push(Piece {
                leg: number,
                from,
                to,
                start: way,
                end: way,
                arc: None,
                is_bowed: false,
            });
        }
        taken = Decimal::ZERO;
        if let Some((from, to, after, rise, far, tangent)) = curve {
            pieces.push(Piece {
                leg: number,
                from,
                to,
                start: way,
                end: after,
                arc: Some((rise, far)),
                is_bowed: false,
            });
            taken = tangent;
        }
        here = end;
    }
    Ok(pieces)
}

/// A leg that is an arc: with t = rise ÷ half the chord it turns by 4·atan t.
fn bow(number: usize, leg: &PathLeg, way: Way, from: Point, to: Point) -> Result<Piece, PathError> {
    let half = Decimal::from(leg.length.as_nanometres()) / Decimal::TWO;
    let rise = Decimal::from(leg.bulge.as_nanometres());
    if half < rise.abs() {
        return Err(PathError::Outline(WalkError::BulgeTooDeep { leg: number }));
    }
    let t = rise / half;
    let whole = Decimal::ONE + t * t;
    let (cosine, sine) = ((Decimal::ONE - t * t) / whole, Decimal::TWO * t / whole);
    let turned = |sine: Decimal| (way.0 * cosine - way.1 * sine, way.1 * cosine + way.0 * sine);
    Ok(Piece {
        leg: number,
        from,
        to,
        start: turned(sine),
        end: turned(-sine),
        arc: Some((
            rise,
            (half * half + rise * rise) / (Decimal::TWO * rise.abs()),
        )),
        is_bowed: true,
    })
}

/// Left and right of each joint of the middle line, on the line that halves the bend there.
fn corners(pieces: &[Piece], left: i64, right: i64) -> Result<Vec<(Point, Point)>, PathError> {
    let mut found = Vec::new();
    for number in 0..=pieces.len() {
        let before = number.checked_sub(1).map(|before| &pieces[before]);
        let after = pieces.get(number);
        let (at, one, other) = match (before, after) {
            (Some(before), Some(after)) => {
                let turn = cross(before.end, after.start).abs();
                let ahead = dot(before.end, after.start);
                let bowed = before.is_bowed || after.is_bowed;
                if bowed && (SMOOTH < turn || ahead < Decimal::ZERO) {
                    return Err(PathError::NotSmooth { leg: after.leg });
                }
                if ahead < SMOOTH * SMOOTH - Decimal::ONE {
                    return Err(PathError::NoBend { leg: before.leg });
                }
                (after.from, before.end, after.start)
            }
            (None, Some(after)) => (after.from, after.start, after.start),
            (Some(before), None) => (before.to, before.end, before.end),
            (None, None) => return Err(PathError::Outline(WalkError::TooFew)),
        };
        // Both normals, each of length one, added and shortened to reach both edges.
        let reach = Decimal::ONE + dot(one, other);
        let normal = (-(one.1 + other.1) / reach, (one.0 + other.0) / reach);
        let out = |far: i64| along(at, normal, Decimal::from(far));
        found.push((out(left), out(-right)));
    }
    // The inner edge of the tightest bend is one point, whatever the last digit says.
    for (number, piece) in pieces.iter().enumerate() {
        let Some((rise, radius)) = piece.arc else {
            continue;
        };
        let inner = if rise < Decimal::ZERO { left } else { right };
        if radius == Decimal::from(inner) {
            let low = found[number];
            let high = &mut found[number + 1];
            *(if rise < Decimal::ZERO { &mut high.0 } else { &mut high.1 }) =
                if rise < Decimal::ZERO { low.0 } else { low.1 };
        }
    }
    Ok(found)
}

#[cfg(test)]
mod tests;
