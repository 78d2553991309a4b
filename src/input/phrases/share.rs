//! A part of a whole: `10%`, `1/3`, an amount of money, or the `rest`.

use std::str::FromStr;

use rust_decimal::Decimal;

use crate::values::{Money, Percent, Unreadable, digits};

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

impl FromStr for Share {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        if text == "rest" {
            return Ok(Self::Rest);
        }
        if text.ends_with('%') {
            return text.parse().map(Self::Percent);
        }
        let refuse = || {
            Unreadable::new(
                "bad-share",
                format!("cannot read `{text}` as a share"),
                "write `10%`, `1/3`, an amount such as `500.00`, or `rest`",
            )
        };
        if let Some((top, bottom)) = text.split_once('/') {
            let (top, bottom) = (
                digits(top).map_err(|_| refuse())?,
                digits(bottom).map_err(|_| refuse())?,
            );
            return if bottom.is_zero() {
                Err(refuse())
            } else {
                Ok(Self::Fraction { top, bottom })
            };
        }
        text.parse().map(Self::Amount).map_err(|_| refuse())
    }
}
