//! JSON and CSV for other programs: decimals as strings, never floats.

pub mod books;
pub mod cost;
pub mod ledger;
pub mod reprice;
mod table;
pub mod takeoff;

use rust_decimal::Decimal;
use serde_json::Value;

use crate::values::Money;

/// `"1305.00"`.
fn money(money: Money) -> Value {
    money.dollars().to_string().into()
}

/// `"7.5"`, exact and without trailing zeros.
fn decimal(number: Decimal) -> Value {
    number.normalize().to_string().into()
}
