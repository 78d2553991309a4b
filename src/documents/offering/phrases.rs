//! Lengths, areas and lists as a homeowner reads them.

use rust_decimal::Decimal;

use crate::geometry::{Angle, Outline};
use crate::input::job::Slab;
use crate::input::phrases::{ShapePhrase, SizePhrase};
use crate::values::{Amount, Length, Unit, rounding};

/// `4 in` with an unbroken space, and fractions as one sign: `½ in`, `24 ft`.
pub fn length(length: Length) -> String {
    signs(&length.to_string()).replace(' ', "\u{a0}")
}

/// What the owner wrote, with fractions as one sign.
pub fn printed(text: &str) -> String {
    signs(text)
}

/// `1/2` as `½`; fractions without a sign of their own stay as they are.
fn signs(text: &str) -> String {
    const SIGNS: [(&str, &str); 7] = [
        ("1/4", "¼"),
        ("1/2", "½"),
        ("3/4", "¾"),
        ("1/8", "⅛"),
        ("3/8", "⅜"),
        ("5/8", "⅝"),
        ("7/8", "⅞"),
    ];
    let mut words: Vec<String> = Vec::new();
    for word in text.split(' ') {
        match SIGNS.iter().find(|(plain, _)| *plain == word) {
            // `5 1/2` is one number: `5½`.
            Some((_, sign))
                if words
                    .last()
                    .is_some_and(|last| last.chars().all(|c| c.is_ascii_digit())) =>
            {
                if let Some(last) = words.last_mut() {
                    last.push_str(sign);
                }
            }
            Some((_, sign)) => words.push((*sign).to_owned()),
            None => words.push(word.to_owned()),
        }
    }
    words.join(" ")
}

/// `24 × 20 ft`, or with inches where a side has them; `12 ft across`; other shapes by their name too.
pub fn size(slab: &Slab) -> String {
    size_of(slab.size.as_ref().map(|size| size.value), &slab.outline)
}

/// A size as it was given, else the box around the outline.
pub(super) fn size_of(size: Option<SizePhrase>, outline: &Outline) -> String {
    let across = |diameter| format!("{} across", length(diameter));
    let (low, high) = outline.bounds();
    let both = sides(
        Length::nanometres(high.x - low.x),
        Length::nanometres(high.y - low.y),
    );
    match size {
        Some(SizePhrase::Circle { diameter }) => across(diameter),
        Some(SizePhrase::Shape(shape)) => match shape {
            ShapePhrase::RightTriangle { .. } | ShapePhrase::Triangle { .. } => {
                format!("{both} (triangle)")
            }
            ShapePhrase::Trapezoid { .. } => format!("{both} (trapezoid)"),
            ShapePhrase::Ring { outside, inside } => {
                let open = length(inside);
                format!("{} ({open} of it open in the middle)", across(outside))
            }
            ShapePhrase::RingSector {
                outside,
                inside,
                angle,
                ..
            } => {
                let wide = length(outside - inside);
                format!("{angle} of a ring {}, {wide} wide", across(outside * 2))
            }
            ShapePhrase::Sector { radius, angle, .. } => match angle {
                Angle::HALF => format!("{} (half circle)", across(radius * 2)),
                Angle::QUARTER => format!("{both} (quarter circle)"),
                _ => format!("{angle} of a circle {}", across(radius * 2)),
            },
        },
        Some(
            SizePhrase::Rectangle { .. } | SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. },
        )
        | None => both,
    }
}

/// Whether a size says the whole shape; of the others the area says more.
pub(super) fn is_plain(size: SizePhrase) -> bool {
    match size {
        SizePhrase::Shape(shape) => match shape {
            ShapePhrase::RightTriangle { .. } | ShapePhrase::Ring { .. } => true,
            ShapePhrase::Sector { angle, .. } => angle == Angle::HALF || angle == Angle::QUARTER,
            ShapePhrase::Triangle { .. }
            | ShapePhrase::Trapezoid { .. }
            | ShapePhrase::RingSector { .. } => false,
        },
        SizePhrase::Rectangle { .. }
        | SizePhrase::Circle { .. }
        | SizePhrase::Block { .. }
        | SizePhrase::AreaDeep { .. } => true,
    }
}

/// Two sides; the unit once where both are whole feet.
pub fn sides(one: Length, other: Length) -> String {
    let (a, b) = (one.feet(), other.feet());
    if a.fract().is_zero() && b.fract().is_zero() {
        return format!("{}\u{a0}×\u{a0}{}\u{a0}ft", a.normalize(), b.normalize());
    }
    format!("{}\u{a0}×\u{a0}{}", length(one), length(other))
}

/// `432 sq ft`, to the whole square foot.
pub fn area(square_feet: Decimal) -> String {
    Amount::new(rounding::to_places(square_feet, 0), Unit::SquareFoot)
        .to_string()
        .replace(' ', "\u{a0}")
}

/// `a, b and c`.
pub fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// The first letter large.
pub fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + chars.as_str()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_read_as_in_a_letter() {
        #[track_caller]
        fn case(text: &str, shown: &str) {
            assert_eq!(length(text.parse().unwrap()), shown);
        }
        case("4 in", "4\u{a0}in");
        case("5 1/2 in", "5½\u{a0}in");
        case("3/8 in", "⅜\u{a0}in");
        case("14 ft 6 in", "14\u{a0}ft\u{a0}6\u{a0}in");
    }

    #[test]
    fn lists_end_with_and() {
        let words = |all: &[&str]| all.iter().map(|w| (*w).to_owned()).collect::<Vec<_>>();
        assert_eq!(list(&words(&["a", "b", "c"])), "a, b and c");
        assert_eq!(list(&words(&["a"])), "a");
    }
}
