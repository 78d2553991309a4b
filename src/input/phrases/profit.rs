//! `markup 25%` on cost, or `margin 20%` of the price: never confused.

use std::str::FromStr;

use rust_decimal::Decimal;

use crate::values::{Percent, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Profit {
    /// Profit over cost.
    Markup(Percent),
    /// Profit over the price before tax; below 100 %.
    Margin(Percent),
}

impl FromStr for Profit {
    type Err = Unreadable;

    fn from_str(text: &str) -> Result<Self, Unreadable> {
        let text = text.trim();
        if let Some(rest) = text.strip_prefix("markup ") {
            return Ok(Self::Markup(rest.parse()?));
        }
        if let Some(rest) = text.strip_prefix("margin ") {
            let margin: Percent = rest.parse()?;
            if Decimal::ONE_HUNDRED <= margin.number() {
                return Err(Unreadable::new(
                    "margin-too-high",
                    format!("a margin of {margin} leaves nothing of the price for the cost"),
                    "margin is profit over price and stays below 100%; for profit over cost write `markup 100%`",
                ));
            }
            return Ok(Self::Margin(margin));
        }
        Err(Unreadable::new(
            "bad-profit",
            format!("cannot read `{text}` as a profit"),
            "write `markup 25%` (on cost) or `margin 20%` (of the price)",
        ))
    }
}
