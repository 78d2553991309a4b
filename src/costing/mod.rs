//! Needs and prices become lines; every total is a sum of lines.
//!
//! `priced` is the last step that can fail. Nothing here knows a shape.

mod buying;
mod change;
mod compare;
mod estimate;
mod lines;
mod offer;
pub mod outcome;
mod payments;
mod prices;
pub mod repricing;
mod sections;
mod sensitivity;
mod totals;
mod unit_prices;

pub use buying::{BuyingRule, Effect, effects};
pub use change::{ChangePrice, Way, book_without_trucks, business_for_changes, change_price};
pub use compare::{Books, Change, Joined, Sold, books, compare, join};
pub use estimate::estimate;
pub use lines::{Cause, LineItem, Side, missing, priced};
pub use offer::{Bought, Offer, Priced, check_sets, offer, with_choice};
pub use payments::{parts, schedule};
pub use prices::{Prices, prices};
pub use sections::{SectionPrice, sections};
pub use sensitivity::{Asked, Rise, Room, Sensitivity, room, sensitivity, together};
pub use totals::Totals;
pub use unit_prices::UnitCost;
