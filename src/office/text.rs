//! Values as the strings that records hold: `2026-05-04`, `2819.60`, `4.75`.

use std::fmt;
use std::str::FromStr;

use rust_decimal::Decimal;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::values::{Day as Calendar, Money, rounding};

/// A day, as `2026-05-04`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(pub Calendar);

/// An amount, as `2819.60`; always two places, below zero with a minus.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cents(pub Money);

/// A number with all its places, as `47.414`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Number(pub Decimal);

impl fmt::Display for Day {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(out)
    }
}

impl fmt::Display for Cents {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.dollars().fmt(out)
    }
}

impl fmt::Display for Number {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(out)
    }
}

impl FromStr for Day {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        text.parse()
            .map(Self)
            .map_err(|_| format!("`{text}` is no day"))
    }
}

impl FromStr for Cents {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let refuse = || format!("`{text}` is no amount");
        let dollars = Decimal::from_str_exact(text).map_err(|_| refuse())?;
        // Twelve digits, as everywhere; more could not have been written by this program.
        if Decimal::from(1_000_000_000_000_i64) <= dollars.abs() || 2 < dollars.normalize().scale()
        {
            return Err(refuse());
        }
        Ok(Self(rounding::to_cents(dollars)))
    }
}

impl FromStr for Number {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        Decimal::from_str_exact(text)
            .map(Self)
            .map_err(|_| format!("`{text}` is no number"))
    }
}

macro_rules! as_text {
    ($($kind:ty),*) => {$(
        impl Serialize for $kind {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $kind {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let text = std::borrow::Cow::<'de, str>::deserialize(from)?;
                text.parse().map_err(D::Error::custom)
            }
        }
    )*};
}

as_text!(Day, Cents, Number);
