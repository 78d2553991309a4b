//! A decimal number with its unit.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;

use super::money::{at_least_two_places, grouped, with_sign};
use super::{Area, Length, Money, Percent, Unit, Unreadable, number, rounding};

/// How much of what.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Amount {
    pub value: Decimal,
    pub unit: Unit,
}

impl Amount {
    /// How any of them is written.
    pub const HOW: &str = "write a number and its unit, for example `120 sq ft` or `2 1/2 cu yd`";

    pub const fn new(value: Decimal, unit: Unit) -> Self {
        Self { value, unit }
    }

    /// Reads `100 sq ft`, and `sq ft` as one of them.
    ///
    /// # Errors
    /// When it is neither.
    pub fn one_or_more(text: &str) -> Result<Self, Unreadable> {
        if text.starts_with(|c: char| c.is_ascii_digit()) {
            text.parse()
        } else {
            Self::new(Decimal::ONE, Unit::Plain).of_unit(text)
        }
    }

    /// So many of the unit that is written; metric ones in ours, by how many of them make one.
    fn of_unit(self, unit: &str) -> Result<Self, Unreadable> {
        match Unit::metric(unit) {
            Some((ours, many)) => Ok(Self::new(self.value / many, ours)),
            None => Ok(Self::new(self.value, unit.parse()?)),
        }
    }

    /// The same in another unit, where both measure the same.
    pub fn to(self, unit: Unit) -> Option<Self> {
        if self.unit == unit {
            return Some(self);
        }
        let (mine, theirs) = self.unit.over(unit)?;
        Some(Self::new(self.value * mine / theirs, unit))
    }

    /// The number alone, grouped, at most four places, as a pocket calculator would show it.
    pub fn number(self) -> String {
        grouped(rounding::to_places(self.value, 4).normalize())
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let number = self.number();
        let text = match self.unit {
            Unit::Dollar => with_sign(at_least_two_places(rounding::to_places(self.value, 6))),
            Unit::Percent => format!("{number}%"),
            Unit::Plain => number,
            unit if self.value == Decimal::ONE => format!("{number} {}", unit.symbol()),
            unit => format!("{number} {}", unit.plural()),
        };
        out.pad(&text)
    }
}

impl From<Money> for Amount {
    fn from(money: Money) -> Self {
        Self::new(money.dollars(), Unit::Dollar)
    }
}

impl From<Area> for Amount {
    fn from(area: Area) -> Self {
        Self::new(area.square_feet(), Unit::SquareFoot)
    }
}

impl From<Percent> for Amount {
    fn from(percent: Percent) -> Self {
        Self::new(percent.number(), Unit::Percent)
    }
}

impl Length {
    pub fn in_feet(self) -> Amount {
        Amount::new(self.feet(), Unit::Foot)
    }

    pub fn in_inches(self) -> Amount {
        Amount::new(self.inches(), Unit::Inch)
    }
}

impl FromStr for Amount {
    type Err = Unreadable;

    /// Reads `120 sq ft`, `2 1/2 cu yd`, `0.25 cu yd`, `1/4 cu yd`, and `12.5 m2` as what that is in sq ft.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let refuse = || {
            Unreadable::new(
                "bad-quantity",
                format!("cannot read `{text}` as a quantity"),
                Self::HOW,
            )
        };
        let end = text.find(|c: char| c.is_alphabetic() || c == '%');
        let (written, unit) = text.split_at(end.unwrap_or(text.len()));
        let written = written.trim_end();
        let meant = || number::slip(written, |meant| text.replacen(written, meant, 1));
        let value = number::mixed(written).ok_or_else(|| refuse().or_help(meant()))?;
        let plain = Self::new(value, Unit::Plain);
        if unit.trim().is_empty() {
            Ok(plain)
        } else {
            plain.of_unit(unit)
        }
    }
}

#[cfg(test)]
mod tests {
    use rust_decimal_macros::dec;

    use super::*;

    #[test]
    fn reads_numbers_with_their_unit() {
        #[track_caller]
        fn case(text: &str, value: Decimal, unit: Unit) {
            assert_eq!(text.parse(), Ok(Amount::new(value, unit)), "{text}");
        }
        case("120 sq ft", dec!(120), Unit::SquareFoot);
        case("2 1/2 cu yd", dec!(2.5), Unit::CubicYard);
        case("1/4 cu yd", dec!(0.25), Unit::CubicYard);
        case("14", dec!(14), Unit::Plain);
        case("½ cu yd", dec!(0.5), Unit::CubicYard);
        // Divided by what one of ours is in metric units, exactly: a trace of the 28th digit at most.
        case("764.554857984 m3", dec!(1000), Unit::CubicYard);
        case("9.290304 m2", dec!(100), Unit::SquareFoot);
        case("45.359237 kg", dec!(100), Unit::Pound);
        case("3.785411784 L", dec!(1), Unit::Gallon);
        case("0.90718474 t", dec!(1), Unit::Ton);
        case("3.048 m", dec!(10), Unit::Foot);
        case("3 EA", dec!(3), Unit::Piece);
        case("2 TON", dec!(2), Unit::Ton);
        let to = |text: &str, unit| text.parse::<Amount>().unwrap().to(unit);
        assert_eq!(
            to("27 cu ft", Unit::CubicYard),
            Some(Amount::new(dec!(1), Unit::CubicYard))
        );
        assert_eq!(
            to("45 min", Unit::Hour),
            Some(Amount::new(dec!(0.75), Unit::Hour))
        );
        assert_eq!(to("1 lb", Unit::Hour), None);
        let refused = |text: &str| text.parse::<Amount>().unwrap_err();
        assert_eq!(refused("cu yd").code, "bad-quantity");
        assert_eq!(refused("12 furlongs").code, "unknown-unit");
        assert_eq!(refused("2 3 cu yd").code, "bad-quantity");
        let commas = refused("1,200 sq ft").help;
        assert_eq!(commas, "leave out the commas; write `1200 sq ft`");
    }

    #[test]
    fn shows_a_number_a_calculator_would_show() {
        assert_eq!(
            Amount::new(dec!(5.33333333), Unit::CubicYard).to_string(),
            "5.3333 cu yd"
        );
        assert_eq!(Amount::new(dec!(1), Unit::Piece).to_string(), "1 piece");
        assert_eq!(
            Amount::new(dec!(1234.50), Unit::Dollar).to_string(),
            "$1,234.50"
        );
        assert_eq!(Amount::new(dec!(7), Unit::Percent).to_string(), "7%");
    }
}
