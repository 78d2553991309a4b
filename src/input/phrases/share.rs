//! A part of a whole: `10%`, `1/3`, an amount of money, or the `rest`.

use rust_decimal::Decimal;

use super::reader::phrase;
use crate::values::{Money, Percent, number};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Share {
    Percent(Percent),
    Fraction { top: Decimal, bottom: Decimal },
    Amount(Money),
    Rest,
}

impl Share {
    /// The part of one that it is, where it does not depend on the total.
    pub fn of_one(self) -> Option<Decimal> {
        match self {
            Self::Percent(percent) => Some(percent.fraction()),
            Self::Fraction { top, bottom } => Some(top / bottom),
            Self::Amount(_) | Self::Rest => None,
        }
    }
}

phrase!(
    Share,
    "share",
    "bad-share",
    "a share",
    "write `10%`, `1/3`, an amount such as `500.00`, or `rest`",
    |said| {
        if said.is("rest") {
            return Ok(Share::Rest);
        }
        if said.text().ends_with('%') {
            return said.read().map(Share::Percent);
        }
        let Some((top, bottom)) = said.text().split_once('/') else {
            return said.need(said.read().ok()).map(Share::Amount);
        };
        let bottom = number::digits(bottom).filter(|bottom| !bottom.is_zero());
        let (top, bottom) = said.need(number::digits(top).zip(bottom))?;
        Ok(Share::Fraction { top, bottom })
    }
);
