//! A decimal number with its unit.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;

use super::money::{at_least_two_places, grouped, with_sign};
use super::{Area, Length, Money, Percent, Unit, Unreadable, rounding};

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
        let end = text
            .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '/' | ' ')))
            .unwrap_or(text.len());
        let (number, unit) = text.split_at(end);
        let mut value = Decimal::ZERO;
        for part in number.split_whitespace() {
            value += super::number(part).ok_or_else(refuse)?;
        }
        if number.trim().is_empty() {
            return Err(refuse());
        }
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
        assert_eq!(
            "cu yd".parse::<Amount>().map_err(|e| e.code),
            Err("bad-quantity")
        );
        assert_eq!(
            "12 furlongs".parse::<Amount>().map_err(|e| e.code),
            Err("unknown-unit")
        );
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
