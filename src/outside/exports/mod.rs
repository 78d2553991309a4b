//! JSON and CSV of a job or of many quotes for other programs: decimals as strings, never floats.

pub mod books;
pub mod cost;
mod layout;
pub mod reprice;
pub mod takeoff;

use rust_decimal::Decimal;
use serde_json::Value;

use crate::documents::column::Cell;
use crate::values::Money;

/// `"1305.00"`.
fn money(money: Money) -> Value {
    Cell::from(money).into()
}

/// `"7.5"`: at most four places, without zeros at the end.
fn quantity(number: Decimal) -> Value {
    Cell::quantity(number).into()
}
