//! The rim of an outline: strips of one width along some of its sides, with every corner counted once.
//!
//! At a distance `s` inside, the strips together are `2 × squares × s` shorter
//! than along the outline, so their area is length × width − squares × width².
//! A square corner takes off one square, an inside corner adds one. Slanted
//! corners follow the mitre; a curve turns evenly, half its angle in squares.
//! Straight outlines and circles are exact; a corner beside a curve is taken by
//! the curve's direction there.

use rust_decimal::Decimal;

use super::cross;
use super::outline::Outline;
use super::point::Point;
use super::side::Side;
use crate::values::Length;

/// A stretch of a side that has a strip on its inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strip {
    /// Number of the side in `Outline::sides`.
    pub side: usize,
    /// From and to along the side, from its first corner; the whole side when `None`.
    pub stretch: Option<(Length, Length)>,
}

/// What the corners of some strips take off, in squares of the width.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Corners {
    pub squares: Decimal,
    /// Corners between two strips that turn outward, and inward.
    pub outside: usize,
    pub inside: usize,
    /// Corners between two strips, either way, that no bar runs around.
    pub sharp: usize,
    /// Whether a corner is not square, or a strip follows a curve.
    pub uneven: bool,
}

impl Strip {
    fn begins(&self) -> bool {
        self.stretch.is_none_or(|(from, _)| from == Length::ZERO)
    }

    fn ends(&self, side: &Side) -> bool {
        self.stretch
            .is_none_or(|(_, to)| side.is_straight() && side.chord() <= to.feet())
    }
}

/// Corners of these strips, each counted once.
pub fn corners(outline: &Outline, strips: &[Strip]) -> Corners {
    counted(outline, strips, &|turn| turn)
}

/// The same for strips outside the outline: what turns outward adds squares, so they are below zero.
pub fn corners_outside(outline: &Outline, strips: &[Strip]) -> Corners {
    counted(outline, strips, &Turn::back)
}

/// The sides whose last corner turns sharply into the slab; in a hole it is the ground that turns out.
pub fn inside_corners(outline: &Outline, is_hole: bool) -> Vec<usize> {
    let sides = outline.sides();
    let turn = |i: usize| Turn::at(&sides[i], &sides[(i + 1) % sides.len()]);
    let inward = |turn: Turn| {
        if is_hole {
            turn.is_left()
        } else {
            turn.is_right()
        }
    };
    (0..sides.len())
        .filter(|&i| turn(i).is_sharp() && inward(turn(i)))
        .collect()
}

fn counted(outline: &Outline, strips: &[Strip], seen: &dyn Fn(Turn) -> Turn) -> Corners {
    let is_outside = seen(Turn::RIGHT_ANGLE).is_right();
    let sides = outline.sides();
    let mut found = Corners::default();
    for (i, side) in sides.iter().enumerate() {
        let next = (i + 1) % sides.len();
        let before = strips
            .iter()
            .any(|strip| strip.side == i && strip.ends(side));
        let after = strips
            .iter()
            .any(|strip| strip.side == next && strip.begins());
        let corner = Turn::at(side, &sides[next]);
        let turn = seen(corner);
        match (before, after) {
            (true, true) => {
                found.squares += turn.mitre();
                found.outside += usize::from(corner.is_left());
                found.inside += usize::from(corner.is_right());
                found.sharp += usize::from(corner.is_sharp());
                found.uneven |= !turn.is_square() && (turn.is_left() || turn.is_right());
            }
            (true, false) | (false, true) => {
                let open = turn.along_neighbor();
                found.squares += open / Decimal::TWO;
                found.uneven |= !open.is_zero();
            }
            (false, false) => {}
        }
        if let Some(radius) = side.radius()
            && strips.iter().any(|strip| strip.side == i)
        {
            let half = side.length() / radius / Decimal::TWO;
            found.squares += if (side.bulge < Length::ZERO) == is_outside {
                half
            } else {
                -half
            };
            found.uneven = true;
        }
    }
    found
}

/// The first strip of this width that has no room: it meets another strip or runs out of the slab.
pub fn too_wide(outline: &Outline, strips: &[Strip], width: Length) -> Option<usize> {
    let sides = outline.sides();
    let inner: Vec<Option<Inner>> = strips
        .iter()
        .map(|strip| Inner::of(outline, strips, strip, width))
        .collect();
    for (i, strip) in strips.iter().enumerate() {
        if let Some(radius) = sides[strip.side].radius() {
            if Length::ZERO < sides[strip.side].bulge && radius <= width.feet() {
                return Some(i);
            }
            continue;
        }
        let Some(mine) = &inner[i] else {
            return Some(i);
        };
        let apart = |other: usize| {
            let many = sides.len();
            let next = (strip.side + 1) % many == other;
            other != strip.side && !next && (other + 1) % many != strip.side
        };
        let around = [
            (mine.from, mine.to),
            (mine.foot.0, mine.from),
            (mine.foot.1, mine.to),
        ];
        let number = |leg| sides.iter().position(|side| side.leg == leg);
        let hits_side = outline.chain().into_iter().any(|(from, to, leg)| {
            number(leg).is_some_and(apart)
                && around.iter().any(|&one| cross::touch(one, (from, to)))
        });
        let hits_strip = strips.iter().zip(&inner).any(|(other, inner)| {
            let inner = inner.as_ref().filter(|_| apart(other.side));
            inner.is_some_and(|inner| cross::touch((mine.from, mine.to), (inner.from, inner.to)))
        });
        if hits_side || hits_strip {
            return Some(i);
        }
    }
    None
}

/// The inside line of a strip, and the stretch of side it belongs to.
struct Inner {
    foot: (Point, Point),
    from: Point,
    to: Point,
}

impl Inner {
    /// `None` when the corners leave nothing of it.
    fn of(outline: &Outline, strips: &[Strip], strip: &Strip, width: Length) -> Option<Self> {
        let sides = outline.sides();
        let side = &sides[strip.side];
        let many = sides.len();
        let way = direction(side, End::Middle);
        let (first, last) = (
            Turn::at(&sides[(strip.side + many - 1) % many], side),
            Turn::at(side, &sides[(strip.side + 1) % many]),
        );
        let has = |number: usize, fits: &dyn Fn(&Strip) -> bool| {
            strips.iter().any(|one| one.side == number && fits(one))
        };
        let before = (strip.side + many - 1) % many;
        let after = (strip.side + 1) % many;
        let cut = |turn: Turn, reaches: bool, neighbor: usize, met: bool| {
            if !reaches {
                return Some(Decimal::ZERO);
            }
            if met {
                return Some(turn.mitre());
            }
            // The strip ends on its neighbor, which has to be as long.
            let long = sides[neighbor].chord();
            (!turn.is_left() || width.feet() <= long * turn.sine).then(|| turn.along_neighbor())
        };
        let at_first = cut(
            first,
            strip.begins(),
            before,
            has(before, &|one| one.ends(&sides[before])),
        )?;
        let at_last = cut(last, strip.ends(side), after, has(after, &Strip::begins))?;
        let (start, end) = strip.stretch.map_or_else(
            || (Decimal::ZERO, side.chord()),
            |(from, to)| (from.feet(), to.feet()),
        );
        let wide = width.feet();
        let (from, to) = (start + wide * at_first, end - wide * at_last);
        if to <= from {
            return None;
        }
        let at = |along: Decimal, inward: Decimal| {
            let x = way.0 * along - way.1 * inward;
            let y = way.1 * along + way.0 * inward;
            side.from
                + Point::new(
                    Length::of_feet(x).as_nanometres(),
                    Length::of_feet(y).as_nanometres(),
                )
        };
        Some(Self {
            foot: (at(start, Decimal::ZERO), at(end, Decimal::ZERO)),
            from: at(from, wide),
            to: at(to, wide),
        })
    }
}

/// How the way turns from one side to the next.
#[derive(Clone, Copy)]
struct Turn {
    sine: Decimal,
    cosine: Decimal,
}

#[derive(Clone, Copy)]
enum End {
    First,
    Middle,
    Last,
}

impl Turn {
    const RIGHT_ANGLE: Self = Self {
        sine: Decimal::ONE,
        cosine: Decimal::ZERO,
    };

    /// As it is seen from the other side of the outline.
    fn back(self) -> Self {
        Self {
            sine: -self.sine,
            ..self
        }
    }

    fn at(side: &Side, next: &Side) -> Self {
        let (a, b) = (direction(side, End::Last), direction(next, End::First));
        Self {
            sine: a.0 * b.1 - a.1 * b.0,
            cosine: a.0 * b.0 + a.1 * b.1,
        }
    }

    fn is_left(self) -> bool {
        Decimal::ZERO < self.sine
    }

    fn is_right(self) -> bool {
        self.sine < Decimal::ZERO
    }

    /// By more than 30 degrees.
    fn is_sharp(self) -> bool {
        let four = Decimal::TWO * Decimal::TWO;
        self.cosine < Decimal::ZERO
            || four * self.cosine * self.cosine < Decimal::TWO + Decimal::ONE
    }

    fn is_square(self) -> bool {
        self.cosine.is_zero()
    }

    /// Tangent of half the turn: how much shorter each strip is, a width inside.
    fn mitre(self) -> Decimal {
        self.sine
            .checked_div(Decimal::ONE + self.cosine)
            .unwrap_or_default()
    }

    /// The same for a strip that ends on a side without one; beyond an inside corner it ends square.
    fn along_neighbor(self) -> Decimal {
        if self.is_left() {
            (-self.cosine).checked_div(self.sine).unwrap_or_default()
        } else {
            Decimal::ZERO
        }
    }
}

/// Which way a side runs, as a step of length 1; a curve by its tangent at that end.
fn direction(side: &Side, end: End) -> (Decimal, Decimal) {
    let chord = side.chord();
    let along = side.to - side.from;
    let part = |n: i64| {
        Length::nanometres(n)
            .feet()
            .checked_div(chord)
            .unwrap_or_default()
    };
    let (x, y) = (part(along.x), part(along.y));
    if side.is_straight() || chord.is_zero() {
        return (x, y);
    }
    // Twice the rise over the chord is the tangent of a quarter of the curve's angle.
    let quarter = side.bulge.feet() * Decimal::TWO / chord;
    let square = quarter * quarter;
    let cosine = (Decimal::ONE - square) / (Decimal::ONE + square);
    let sine = quarter * Decimal::TWO / (Decimal::ONE + square);
    match end {
        End::First => (x * cosine + y * sine, y * cosine - x * sine),
        End::Middle => (x, y),
        End::Last => (x * cosine - y * sine, y * cosine + x * sine),
    }
}

#[cfg(test)]
mod tests;
