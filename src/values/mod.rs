//! Numbers that carry their unit, and the only place where anything is rounded.
//!
//! Lengths are whole nanometres, money is whole cents, everything else is
//! decimal. Nothing here is ever a binary float.

/// What a value that is one whole number inside can do: be added, taken away, turned round.
macro_rules! whole_number_inside {
    ($value:ident) => {
        impl std::ops::Add for $value {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::Sub for $value {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::Neg for $value {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }
    };
}
pub mod amount;
pub mod area;
pub mod day;
pub mod length;
pub mod money;
pub mod percent;
pub mod rounding;
pub mod unit;

use whole_number_inside;

pub use amount::Amount;
pub use area::Area;
pub use day::Day;
pub use length::Length;
pub use money::{Money, UnitPrice};
pub use percent::Percent;
pub use unit::Unit;

use rust_decimal::Decimal;

/// Why a piece of text could not be read as a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The folder of the message in the error gallery.
    pub code: &'static str,
    /// One line, lower case, no full stop, the reader's word in backticks.
    pub message: String,
    /// What to write instead.
    pub help: String,
}

impl Unreadable {
    pub fn new(code: &'static str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            code,
            message: message.into(),
            help: help.into(),
        }
    }
}

/// Reads plain decimal digits: no sign, exponent, comma, currency or underscore.
///
/// # Errors
/// When `text` is anything but digits with at most one point between digits,
/// or has more than twelve digits before or nine after the point.
pub fn digits(text: &str) -> Result<Decimal, &'static str> {
    let (whole, part) = text.split_once('.').unwrap_or((text, "0"));
    let plain = |s: &str| !s.is_empty() && s.bytes().all(|b| b.is_ascii_digit());
    if !plain(whole) || !plain(part) {
        return Err("write plain digits, for example `12` or `12.50`");
    }
    if 12 < whole.len() || 9 < part.len() {
        return Err("at most twelve digits before the point and nine after it");
    }
    Decimal::from_str_exact(text).map_err(|_| "write plain digits, for example `12.50`")
}

/// Reads digits, `3/4`, and the fractions that have a letter of their own.
fn number(text: &str) -> Option<Decimal> {
    match (text, text.split_once('/')) {
        ("¼", _) => Some(Decimal::new(25, 2)),
        ("½", _) => Some(Decimal::new(5, 1)),
        ("¾", _) => Some(Decimal::new(75, 2)),
        (_, None) => digits(text).ok(),
        (_, Some((top, bottom))) => digits(top).ok()?.checked_div(digits(bottom).ok()?),
    }
}
