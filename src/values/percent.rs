//! Percentages, kept as the number before the sign.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;

use super::{Unreadable, number};

/// `7%` is `Percent::new(7)`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Percent(Decimal);

impl Percent {
    pub const fn new(number: Decimal) -> Self {
        Self(number)
    }

    pub const fn number(self) -> Decimal {
        self.0
    }

    /// `7%` is 0.07.
    pub fn fraction(self) -> Decimal {
        self.0 / Decimal::ONE_HUNDRED
    }
}

impl fmt::Display for Percent {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.pad(&format!("{}%", self.0.normalize()))
    }
}

impl FromStr for Percent {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let refuse = || {
            Unreadable::new(
                "bad-percent",
                format!("cannot read `{text}` as a percentage"),
                "write a number and the sign, for example `7%` or `8.25%`",
            )
        };
        let written = text.trim().strip_suffix('%').ok_or_else(refuse)?.trim_end();
        let meant = || number::slip(written, |meant| format!("{meant}%"));
        let number = number::digits(written).map(Self);
        number.ok_or_else(|| refuse().or_help(meant()))
    }
}
