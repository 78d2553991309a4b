//! Values as the strings that records hold: `2026-05-04`, `2819.60`, `4.75`.

use std::fmt;

use rust_decimal::Decimal;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::values::{Day as Calendar, Money, rounding};

/// A value in its own type, and how it is written and read: to text, from text.
macro_rules! as_text {
    ($($(#[$about:meta])* $kind:ident($held:ty), $shown:expr, $read:expr;)*) => {$(
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub struct $kind(pub $held);

        impl fmt::Display for $kind {
            fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
                let shown: fn($held) -> _ = $shown;
                shown(self.0).fmt(out)
            }
        }

        impl Serialize for $kind {
            fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
                to.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $kind {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                let text = std::borrow::Cow::<'de, str>::deserialize(from)?;
                let read: fn(&str) -> Result<$held, String> = $read;
                read(&text).map(Self).map_err(D::Error::custom)
            }
        }
    )*};
}

as_text! {
    /// A day, as `2026-05-04`.
    Day(Calendar), |day| day, |text| text.parse().map_err(|_| format!("`{text}` is no day"));
    /// An amount, as `2819.60`; always two places, below zero with a minus.
    #[derive(Default)]
    Cents(Money), Money::dollars, cents;
    /// A number with all its places, as `47.414`.
    Number(Decimal), |number| number, number;
}

fn number(text: &str) -> Result<Decimal, String> {
    Decimal::from_str_exact(text).map_err(|_| format!("`{text}` is no number"))
}

fn cents(text: &str) -> Result<Money, String> {
    let dollars = Decimal::from_str_exact(text).ok();
    // Twelve digits, as everywhere; more could not have been written by this program.
    let fits = |dollars: &Decimal| {
        dollars.abs() < Decimal::from(1_000_000_000_000_i64) && dollars.normalize().scale() <= 2
    };
    let dollars = dollars.filter(fits);
    let dollars = dollars.ok_or_else(|| format!("`{text}` is no amount"))?;
    Ok(rounding::to_cents(dollars))
}
