//! How the owner prices, orders, works and promises: one group of keys a file.

mod crew;
mod cure;
mod order;
mod pour_day;
mod price;
mod quote;

pub use crew::{Charge, CrewPolicy, DayCount, DayRule, LaborLines, NightBefore, SetLids};
pub use cure::CurePolicy;
pub use order::{Buying, OrderPolicy};
pub use pour_day::PourDayPolicy;
pub use price::{PricePolicy, TaxBase, TaxRule};
pub use quote::QuotePolicy;
