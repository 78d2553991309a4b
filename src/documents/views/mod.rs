//! Views: what a document says, as finished strings, one file a document; `office` is the terminal's.

pub mod bill;
pub mod change;
pub mod cost;
pub mod office;
pub mod quote;
pub mod reprice_page;
