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
            Ok(Self::new(Decimal::ONE, text.parse()?))
        }
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

    /// Reads `120 sq ft`, `2 1/2 cu yd`, `0.25 cu yd`, `1/4 cu yd`.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        let refuse = || {
            Unreadable::new(
                "bad-quantity",
                format!("cannot read `{text}` as a quantity"),
                "write a number and its unit, for example `120 sq ft` or `2 1/2 cu yd`",
            )
        };
        let end = text.find(|c: char| c.is_alphabetic() || c == '%');
        let (written, unit) = text.split_at(end.unwrap_or(text.len()));
        let written = written.trim_end();
        let meant = || number::slip(written, |meant| text.replacen(written, meant, 1));
        let value = number::mixed(written).ok_or_else(|| refuse().or_help(meant()))?;
        let unit = if unit.trim().is_empty() {
            Unit::Plain
        } else {
            unit.parse()?
        };
        Ok(Self { value, unit })
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
