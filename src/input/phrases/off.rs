//! What is taken off a price: `5%`, or an amount such as `150.00`.

use super::reader::phrase;
use crate::values::{Money, Percent};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Off {
    Percent(Percent),
    Amount(Money),
}

phrase!(
    Off,
    "percent or amount",
    "bad-discount",
    "what is taken off",
    "write a percentage of the price, such as `5%`, or an amount such as `150.00`",
    |said| {
        if said.text().ends_with('%') {
            let percent: Percent = said.read()?;
            let whole = percent.number() <= rust_decimal::Decimal::ONE_HUNDRED;
            return said.need(whole.then_some(Off::Percent(percent)));
        }
        let text = said.text();
        let dollars = text.strip_prefix('$').unwrap_or(text).parse();
        said.need(dollars.ok()).map(Off::Amount)
    }
);
