//! Angles in half degrees, and where they lead: own series, since decimals bring no sine of 28 digits.

use std::fmt;
use std::str::FromStr;

use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, MathematicalOps as _};
use rust_decimal_macros::dec;

use super::point::Point;
use crate::values::{Length, Unreadable, number, rounding};

/// An angle of a sector: half degrees, more than none and less than a whole turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Angle(u16);

/// Eighths of a degree in a whole turn, so that a quarter of half a degree is whole.
const TURN: i32 = 2880;

impl Angle {
    pub const HALF: Self = Self(360);
    pub const QUARTER: Self = Self(180);

    pub(super) fn eighths(self) -> i32 {
        i32::from(self.0) * 4
    }
}

impl fmt::Display for Angle {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let half = if self.0.is_multiple_of(2) { "" } else { ".5" };
        write!(out, "{}{half} degrees", self.0 / 2)
    }
}

impl FromStr for Angle {
    type Err = Unreadable;

    /// Reads `90 degrees`, `67.5 degrees`, `1 degree`, `90°`.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = |message: String, help: &str| Unreadable::new("bad-angle", message, help);
        let text = text.trim();
        let number = ["degrees", "degree", "deg", "°"]
            .iter()
            .find_map(|unit| text.strip_suffix(unit))
            .and_then(|written| number::digits(written.trim()))
            .ok_or_else(|| {
                refuse(
                    format!("cannot read `{text}` as an angle"),
                    "write whole or half degrees, for example `90 degrees` or `67.5 degrees`",
                )
            })?;
        let halves = number * Decimal::TWO;
        if !halves.fract().is_zero() {
            return Err(refuse(
                format!("`{text}` is finer than half a degree"),
                "write whole or half degrees, for example `67.5 degrees`",
            ));
        }
        match halves.to_u16() {
            Some(halves @ 1..720) => Ok(Self(halves)),
            Some(720) => Err(refuse(
                format!("`{text}` is the whole circle"),
                "write `circle` and its diameter, for example `circle 12 ft`",
            )),
            _ => Err(refuse(
                format!("`{text}` is no angle of a sector"),
                "a sector has more than 0 and less than 360 degrees",
            )),
        }
    }
}

/// The place so many eighths of a degree from east toward north, `radius` from (0, 0).
pub(super) fn place(radius: Length, eighths: i32) -> Point {
    let (cosine, sine) = cosine_sine(eighths);
    let far = |share: Decimal| {
        rounding::to_places(Decimal::from(radius.as_nanometres()) * share, 0)
            .to_i64()
            .expect("no farther than the radius")
    };
    Point::new(far(cosine), far(sine))
}

/// How far an arc of this radius stands off its chord, for an arc of twice this angle.
pub(super) fn rise(radius: Length, half_of_arc: i32) -> Length {
    Length::nanometres(radius.as_nanometres() - place(radius, half_of_arc).x)
}

/// East and north of a step of one, so many eighths of a degree from east toward north.
pub(super) fn unit(eighths: i32) -> (Decimal, Decimal) {
    cosine_sine(eighths)
}

/// The square root of what is not below zero.
pub(super) fn root(square: Decimal) -> Decimal {
    square.sqrt().unwrap_or_default()
}

/// Of an angle in eighths of a degree; mirrored and turned angles give mirrored and turned places.
fn cosine_sine(eighths: i32) -> (Decimal, Decimal) {
    const QUARTER: i32 = TURN / 4;
    let eighths = eighths.rem_euclid(TURN);
    let within = eighths % QUARTER;
    let (cosine, sine) = if within <= QUARTER / 2 {
        series(within)
    } else {
        let (cosine, sine) = series(QUARTER - within);
        (sine, cosine)
    };
    match eighths / QUARTER {
        0 => (cosine, sine),
        1 => (-sine, cosine),
        2 => (-cosine, -sine),
        _ => (sine, -cosine),
    }
}

/// Taylor's series, up to 45 degrees, where each term is far smaller than the one before.
fn series(eighths: i32) -> (Decimal, Decimal) {
    let x = Decimal::PI * Decimal::from(eighths) / Decimal::from(TURN / 2);
    let (mut cosine, mut sine) = (Decimal::ZERO, Decimal::ZERO);
    let (mut term, mut n) = (Decimal::ONE, 0_u8);
    while dec!(0.00000000000000000000000001) < term {
        let negative = 2 <= n % 4;
        let signed = if negative { -term } else { term };
        if n.is_multiple_of(2) {
            cosine += signed;
        } else {
            sine += signed;
        }
        n += 1;
        term = term * x / Decimal::from(n);
    }
    (cosine, sine)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Known angles; the root of three and of two computed for this test at 40 digits.
    #[test]
    fn known_angles_have_known_sines() {
        #[track_caller]
        fn case(degrees: i32, cosine: Decimal, sine: Decimal) {
            let (c, s) = cosine_sine(degrees * 8);
            let near = |a: Decimal, b: Decimal| (a - b).abs() < dec!(0.0000000000000000000001);
            assert!(near(c, cosine) && near(s, sine), "{degrees}: {c} {s}");
        }
        let (root3, root2) = (
            dec!(0.8660254037844386467637231707),
            dec!(0.7071067811865475244008443621),
        );
        case(0, dec!(1), dec!(0));
        case(30, root3, dec!(0.5));
        case(45, root2, root2);
        case(60, dec!(0.5), root3);
        case(90, dec!(0), dec!(1));
        case(120, dec!(-0.5), root3);
        case(135, -root2, root2);
        case(180, dec!(-1), dec!(0));
        case(240, dec!(-0.5), -root3);
        case(330, root3, dec!(-0.5));
        case(-45, root2, -root2);
    }

    #[test]
    fn angles_are_whole_or_half_degrees_of_less_than_a_turn() {
        let shown = |text: &str| text.parse::<Angle>().map(|angle| angle.to_string());
        assert_eq!(shown("90 degrees"), Ok("90 degrees".to_owned()));
        assert_eq!(shown("67.5°"), Ok("67.5 degrees".to_owned()));
        for text in [
            "0 degrees",
            "90",
            "30.25 degrees",
            "360 degrees",
            "400 degrees",
        ] {
            assert_eq!(text.parse::<Angle>().map_err(|e| e.code), Err("bad-angle"));
        }
    }
}
