//! Lengths as people say them, exact in any order of adding.

use std::fmt;
use std::ops::Mul;
use std::str::FromStr;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::{Area, Unreadable, number};

/// A length: whole nanometres, so 1/64 in (396,875) and 1 mm are both exact.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Length(i64);

const FOOT: i64 = 304_800_000;
const INCH: i64 = 25_400_000;

impl Length {
    pub const ZERO: Self = Self(0);
    /// The longest length a takeoff may hold; it keeps later arithmetic from overflowing.
    pub const LONGEST: Self = Self(1_000 * FOOT);

    pub const fn nanometres(nanometres: i64) -> Self {
        Self(nanometres)
    }

    pub const fn as_nanometres(self) -> i64 {
        self.0
    }

    pub const fn feet_whole(feet: i64) -> Self {
        Self(feet * FOOT)
    }

    /// Whole sixty-fourths of an inch.
    pub const fn sixty_fourths(n: i64) -> Self {
        Self(n * (INCH / 64))
    }

    pub const fn inches_whole(inches: i64) -> Self {
        Self(inches * INCH)
    }

    pub fn feet(self) -> Decimal {
        Decimal::from(self.0) / Decimal::from(FOOT)
    }

    /// The nearest whole nanometre; feet come from lengths within the limit of a takeoff.
    pub fn of_feet(feet: Decimal) -> Self {
        let nanometres = super::rounding::to_places(feet * Decimal::from(FOOT), 0);
        Self(i64::try_from(nanometres).expect("lengths are limited on reading"))
    }

    pub fn inches(self) -> Decimal {
        Decimal::from(self.0) / Decimal::from(INCH)
    }

    /// The shortest length that is not below so many inches.
    pub fn inches_up(inches: Decimal) -> Self {
        let nanometres = (inches * Decimal::from(INCH)).ceil();
        Self(i64::try_from(nanometres).expect("measures are limited on reading"))
    }

    pub const fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// To the nearest eighth of an inch, for showing what no tape tells finer.
    pub fn to_the_eighth(self) -> Self {
        Self(super::rounding::to_multiple(self.0, INCH / 8))
    }

    pub const fn half(self) -> Self {
        Self(self.0 / 2)
    }
}

super::whole_number_inside!(Length);

impl Mul for Length {
    type Output = Area;
    fn mul(self, width: Self) -> Area {
        Area::square_nanometres(i128::from(self.0) * i128::from(width.0))
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, times: i64) -> Self {
        Self(self.0 * times)
    }
}

/// `14 ft 6 in`, `5 1/2 in`, `12 ft`: feet and inches, sixty-fourths when exact, else decimal inches.
impl fmt::Display for Length {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let rest = self.0.abs();
        let (feet, inch_part) = (rest / FOOT, rest % FOOT);
        let inches = match (feet, inch_part) {
            (_, 0) => return write!(out, "{sign}{feet} ft"),
            // Thicknesses and small widths are said in inches on a job site.
            (0 | 1, _) => {
                out.write_str(sign)?;
                rest
            }
            _ => {
                write!(out, "{sign}{feet} ft ")?;
                inch_part
            }
        };
        in_inches(inches, out)?;
        out.write_str(" in")
    }
}

fn in_inches(nanometres: i64, out: &mut fmt::Formatter<'_>) -> fmt::Result {
    let (whole, part) = (nanometres / INCH, nanometres % INCH);
    if part == 0 {
        return write!(out, "{whole}");
    }
    let step = INCH / 64;
    if part % step != 0 {
        let inches = Decimal::from(nanometres) / Decimal::from(INCH);
        return write!(out, "{}", super::rounding::to_places(inches, 2).normalize());
    }
    let (mut top, mut bottom) = (part / step, 64);
    while top % 2 == 0 {
        top /= 2;
        bottom /= 2;
    }
    if whole == 0 {
        write!(out, "{top}/{bottom}")
    } else {
        write!(out, "{whole} {top}/{bottom}")
    }
}

impl FromStr for Length {
    type Err = Unreadable;

    /// Reads `24 ft`, `14 ft 6 in`, `14'-6"`, `5 1/2 in`, `3.5 in`, `1200 mm`, `1.2 m`.
    ///
    /// # Errors
    /// A number without a unit, an unknown unit, a fraction over zero, nothing at
    /// all, or a length over 1,000 ft.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = |why: String| {
            Unreadable::new(
                "bad-length",
                why,
                "write feet and inches, for example `14 ft 6 in`, `5 1/2 in` or `14'-6\"`; `mm`, `cm` and `m` are fine too",
            )
        };
        let mut total = Decimal::ZERO;
        let mut pending: Option<Decimal> = None;
        let mut units = Vec::new();
        for token in tokens(text) {
            match token {
                Token::Number(n) => {
                    let meant = || number::slip(n, |meant| text.trim().replacen(n, meant, 1));
                    let value = number::single(n).ok_or_else(|| {
                        let why = format!("cannot read `{n}` as a number in the length `{text}`");
                        refuse(why).or_help(meant())
                    })?;
                    // `5 1/2`: a whole number followed by a fraction is one number.
                    pending = match pending {
                        None => Some(value),
                        Some(whole) if number::is_fraction(n) && whole.fract().is_zero() => {
                            Some(whole + value)
                        }
                        Some(_) => {
                            return Err(refuse(format!(
                                "two numbers without a unit between them in `{text}`"
                            )));
                        }
                    };
                }
                Token::Word(word) => {
                    let unit = nanometres_in(word)
                        .ok_or_else(|| refuse(format!("`{word}` is not a unit of length")))?;
                    let value = pending
                        .take()
                        .ok_or_else(|| refuse(format!("no number before `{word}` in `{text}`")))?;
                    if units.contains(&unit) {
                        return Err(refuse(format!("`{text}` says `{word}` twice")));
                    }
                    total += value * unit;
                    units.push(unit);
                }
            }
        }
        match (pending, units.len()) {
            (Some(_), 0) => {
                let number = text.trim();
                return Err(Unreadable::new(
                    "length-without-unit",
                    format!("`{text}` has no unit"),
                    format!("say what it is, for example `{number} ft` or `{number} in`"),
                ));
            }
            (Some(_), _) => {
                return Err(refuse(format!("the last number of `{text}` has no unit")));
            }
            (None, 0) => return Err(refuse(format!("`{text}` is not a length"))),
            (None, _) => {}
        }
        if Decimal::from(Self::LONGEST.0) < total {
            return Err(Unreadable::new(
                "length-too-long",
                format!("`{text}` is over 1,000 ft"),
                "check the unit; a slab that long is several slabs",
            ));
        }
        let whole = super::rounding::to_places(total, 0);
        Ok(Self(i64::try_from(whole).expect("limited just above")))
    }
}

enum Token<'a> {
    Number(&'a str),
    Word(&'a str),
}

/// Splits `14'-6"` and `14 ft 6 in` alike; a hyphen between parts is only a spacer.
fn tokens(text: &str) -> Vec<Token<'_>> {
    let mut found = Vec::new();
    let mut rest = text.trim();
    while let Some(first) = rest.chars().next() {
        if first.is_whitespace() || (first == '-' && !found.is_empty()) {
            rest = &rest[first.len_utf8()..];
            continue;
        }
        let is_number =
            |c: char| c.is_ascii_digit() || matches!(c, '.' | '/' | ',' | '_' | '¼'..='¾');
        let end = if is_number(first) {
            rest.find(|c| !is_number(c)).unwrap_or(rest.len())
        } else if first.is_alphabetic() {
            rest.find(|c: char| !c.is_alphabetic())
                .unwrap_or(rest.len())
        } else {
            first.len_utf8()
        };
        let (token, after) = rest.split_at(end);
        found.push(if is_number(first) {
            Token::Number(token)
        } else {
            Token::Word(token)
        });
        rest = after;
    }
    found
}

fn nanometres_in(word: &str) -> Option<Decimal> {
    Some(match word {
        "ft" | "foot" | "feet" | "'" | "′" | "’" => dec!(304_800_000),
        "in" | "inch" | "inches" | "\"" | "″" | "”" => dec!(25_400_000),
        "yd" | "yard" | "yards" => dec!(914_400_000),
        "mm" => dec!(1_000_000),
        "cm" => dec!(10_000_000),
        "m" => dec!(1_000_000_000),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_the_ways_lengths_are_said_on_site() {
        #[track_caller]
        fn case(text: &str, inches: Decimal) {
            let length: Length = text.parse().unwrap();
            assert_eq!(length.inches().normalize(), inches.normalize(), "{text}");
        }
        case("6 in", dec!(6));
        case("12.5 ft", dec!(150));
        case("12'-6\"", dec!(150));
        case("12' 6\"", dec!(150));
        case("14 ft 6 in", dec!(174));
        case("5 1/2 in", dec!(5.5));
        case("1/64 in", dec!(0.015625));
        case("4in", dec!(4));
        case("254 mm", dec!(10));
        case("2.54 m", dec!(100));
        case("3 ½ in", dec!(3.5));
    }

    #[test]
    fn refuses_what_could_be_misread() {
        #[track_caller]
        fn case(text: &str, code: &str) {
            assert_eq!(
                text.parse::<Length>().map_err(|e| e.code),
                Err(code),
                "{text}"
            );
        }
        case("12.6", "length-without-unit");
        case("12", "length-without-unit");
        case("", "bad-length");
        case("12 furlongs", "bad-length");
        case("1,200 ft", "bad-length");
        case("ft", "bad-length");
        case("12 6 ft", "bad-length");
        case("1/0 in", "bad-length");
        case("-4 in", "bad-length");
        case("1001 ft", "length-too-long");
        case("12 ft 6", "bad-length");
        case("12 ft 14 ft", "bad-length");
    }

    #[test]
    fn twelve_times_five_inches_is_exactly_five_feet() {
        let five: Length = "5 in".parse().unwrap();
        let sum = (0..12).fold(Length::ZERO, |sum, _| sum + five);
        assert_eq!(sum.feet(), dec!(5));
    }

    #[test]
    fn shows_what_a_crew_would_say() {
        #[track_caller]
        fn case(text: &str, shown: &str) {
            assert_eq!(text.parse::<Length>().unwrap().to_string(), shown);
        }
        case("12.5 ft", "12 ft 6 in");
        case("24 ft", "24 ft");
        case("5.5 in", "5 1/2 in");
        case("18 in", "18 in");
        case("1 m", "3 ft 3.37 in");
    }
}
