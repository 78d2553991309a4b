//! Numbers that carry their unit, and the only place where anything is rounded.
//!
//! Lengths are whole nanometres, money is whole cents, everything else is
//! decimal. Nothing here is ever a binary float.

use std::ops::Range;

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
pub mod number;
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

/// Why a piece of text could not be read as a value.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The folder of the message in the error gallery.
    pub code: &'static str,
    /// One line, lower case, no full stop, the reader's word in backticks.
    pub message: String,
    /// What to write instead.
    pub help: String,
    /// What it is about, where that is less than the whole text.
    pub part: Option<Part>,
}

/// A part of a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// In bytes of the text.
    pub range: Range<usize>,
    /// How long the whole text is.
    pub of: usize,
}

impl Unreadable {
    pub fn new(code: &'static str, message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            code,
            message: message.into(),
            help: help.into(),
            part: None,
        }
    }

    /// The same with a better help, where there is one.
    #[must_use]
    pub fn or_help(mut self, better: Option<String>) -> Self {
        self.help = better.unwrap_or(self.help);
        self
    }

    /// The same, about one part of the whole text.
    #[must_use]
    pub fn part(mut self, range: Range<usize>, whole: &str) -> Self {
        let of = whole.len();
        self.part = Some(Part { range, of });
        self
    }
}
