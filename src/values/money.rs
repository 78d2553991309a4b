//! Money in whole cents, and unit prices that carry more places.

use std::fmt;
use std::iter::Sum;
use std::ops::Add;
use std::str::FromStr;

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive as _;

use super::{Unreadable, number};

/// `1,234.5`: thousands grouped, places as they are.
pub fn grouped(number: Decimal) -> String {
    let text = number.abs().to_string();
    let (whole, part) = text.split_at(text.find('.').unwrap_or(text.len()));
    let mut out = String::from(if number.is_sign_negative() { "-" } else { "" });
    for (i, digit) in whole.chars().enumerate() {
        if i != 0 && (whole.len() - i).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out + part
}

/// `$1,234.50`, and `-$4.00` below zero.
pub(super) fn with_sign(dollars: Decimal) -> String {
    let text = grouped(dollars);
    text.strip_prefix('-')
        .map_or_else(|| format!("${text}"), |rest| format!("-${rest}"))
}

/// A unit price has two places or as many as it needs.
pub(super) fn at_least_two_places(dollars: Decimal) -> Decimal {
    let mut shown = dollars.normalize();
    if shown.scale() < 2 {
        shown.rescale(2);
    }
    shown
}

/// Whole cents; only `rounding::to_cents` turns anything else into money.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Money(i64);

impl Money {
    pub const ZERO: Self = Self(0);

    pub const fn cents(cents: i64) -> Self {
        Self(cents)
    }

    pub const fn as_cents(self) -> i64 {
        self.0
    }

    pub fn dollars(self) -> Decimal {
        Decimal::new(self.0, 2)
    }

    pub const fn is_zero(self) -> bool {
        self.0 == 0
    }

    /// `12,200.60`: grouped, two places, no currency sign.
    pub fn plain(self) -> String {
        grouped(self.dollars())
    }
}

/// `$12,200.60`, and `-$4.00` below zero.
impl fmt::Display for Money {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&with_sign(self.dollars()))
    }
}

super::whole_number_inside!(Money);

impl Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::ZERO, Add::add)
    }
}

impl FromStr for Money {
    type Err = Unreadable;

    /// Reads `85` or `85.00`: dollars, at most two places.
    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let price: UnitPrice = text.parse()?;
        let cents = price.dollars() * Decimal::ONE_HUNDRED;
        let whole = cents.to_i64().filter(|_| cents.fract().is_zero());
        whole.map(Money::cents).ok_or_else(|| {
            Unreadable::new(
                "bad-amount",
                format!("`{text}` has parts of a cent"),
                "an amount of money has at most two places, for example `85.00`",
            )
        })
    }
}

/// Dollars for one unit; may carry parts of a cent.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct UnitPrice(Decimal);

impl UnitPrice {
    pub const fn new(dollars: Decimal) -> Self {
        Self(dollars)
    }

    pub const fn dollars(self) -> Decimal {
        self.0
    }
}

/// At least two places: `178.00`, `0.725`.
impl fmt::Display for UnitPrice {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&at_least_two_places(self.0).to_string())
    }
}

impl FromStr for UnitPrice {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        number::digits(text.trim()).map(Self).ok_or_else(|| {
            Unreadable::new(
                "bad-amount",
                format!("cannot read `{text}` as dollars"),
                "write plain digits without sign or comma, for example `178.00`",
            )
            .or_help(number::slip(text, str::to_owned))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shows_dollars_grouped_with_two_places() {
        assert_eq!(Money::cents(1_220_060).to_string(), "$12,200.60");
        assert_eq!(Money::cents(-5).to_string(), "-$0.05");
        assert_eq!(Money::cents(100_000_000).plain(), "1,000,000.00");
        assert_eq!(Money::ZERO.to_string(), "$0.00");
    }

    #[test]
    fn refuses_what_is_not_plain_dollars() {
        for text in [
            "$5",
            "1,000",
            "1e3",
            "1_000",
            "+1",
            "-1",
            "1.",
            ".5",
            "",
            "0.1234567891",
            "1234567890123",
        ] {
            assert_eq!(
                text.parse::<UnitPrice>().map_err(|e| e.code),
                Err("bad-amount"),
                "{text}"
            );
        }
        assert_eq!(
            "85.005".parse::<Money>().map_err(|e| e.code),
            Err("bad-amount")
        );
        assert_eq!("85".parse::<Money>(), Ok(Money::cents(8500)));
    }
}
