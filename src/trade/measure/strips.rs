//! Strips along sides, inside the outline or outside, with every corner counted once.

use rust_decimal::Decimal;

use super::edges;
use crate::geometry::rim::{self, Corners, Strip};
use crate::input::job::Slab;
use crate::reading::At;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// Square feet that lie outside of these sides, as far as `past`; none where it is nothing.
pub(super) fn beyond(
    slab: &Slab,
    strips: &[Strip],
    past: &At<Length>,
    title: &str,
    tally: &Tally<'_>,
) -> Option<Quantity> {
    if past.value == Length::ZERO || strips.is_empty() {
        return None;
    }
    let lengths: Vec<Quantity> = strips
        .iter()
        .map(|strip| edges::along(slab, strip.side, strip.stretch))
        .collect();
    let corners = Turns::of(
        slab,
        "form corners",
        &rim::corners_outside(&slab.outline, strips),
    );
    let past = Quantity::feet("past the forms", past);
    Some(tally.between(
        "length × width; each corner adds a square of the width, an inside corner takes one off",
        title,
        Unit::SquareFoot,
        corners.off(sum(&lengths) * &past, |corners| of(corners) * &past * &past),
    ))
}

/// How many squares of the width the corners take off, or add where more of them turn inward.
pub(super) enum Turns {
    None,
    Off(Quantity),
    On(Quantity),
}

impl Turns {
    pub(super) fn of(slab: &Slab, title: &str, found: &Corners) -> Self {
        if found.squares.is_zero() {
            return Self::None;
        }
        let count = |number: usize, what: &str| {
            let s = if number == 1 { "" } else { "s" };
            (number != 0).then(|| format!("{number} {what} corner{s}"))
        };
        let mut how: Vec<String> = [
            count(found.outside, "outside"),
            count(found.inside, "inside"),
        ]
        .into_iter()
        .flatten()
        .collect();
        if found.uneven {
            how.push("slants and curves by how far they turn".into());
        }
        let squares = Quantity::new(
            format!("{} {title}", slab.key),
            Amount::new(found.squares.abs(), Unit::Plain),
            Working::Shape {
                how: how.join(", "),
                place: slab.place,
            },
        );
        if found.squares < Decimal::ZERO {
            Self::On(squares)
        } else {
            Self::Off(squares)
        }
    }

    /// `flat` without what the corners take off.
    pub(super) fn off(&self, flat: Term, each: impl FnOnce(&Quantity) -> Term) -> Term {
        match self {
            Self::None => flat,
            Self::Off(squares) => flat - each(squares),
            Self::On(squares) => flat + each(squares),
        }
    }
}
