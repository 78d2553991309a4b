//! `markup 25%` on cost, or `margin 20%` of the price: never confused.

use rust_decimal::Decimal;

use super::reader::phrase;
use crate::values::{Percent, Unreadable};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Profit {
    /// Profit over cost.
    Markup(Percent),
    /// Profit over the price before tax; below 100 %.
    Margin(Percent),
}

phrase!(
    Profit,
    "markup or margin",
    "bad-profit",
    "a profit",
    "write `markup 25%` (on cost) or `margin 20%` (of the price)",
    |said| {
        if let Some(markup) = said.after("markup ") {
            return markup.read().map(Profit::Markup);
        }
        let margin: Percent = said.need(said.after("margin "))?.read()?;
        if Decimal::ONE_HUNDRED <= margin.number() {
            return Err(Unreadable::new(
                "margin-too-high",
                format!("a margin of {margin} leaves nothing of the price for the cost"),
                "margin is profit over price and stays below 100%; for profit over cost write `markup 100%`",
            ));
        }
        Ok(Profit::Margin(margin))
    }
);
