//! Needs and prices become lines; every total is a sum of lines.
//!
//! `priced` is the last step that can fail. Nothing here knows a shape. Each room uses only those
//! before it: prices, pricing, lines, least, totals, estimate, payments, `unit_prices`, bought, ways, offer, sections,
//! buying, change, compare, sensitivity, repricing, outcome.

mod bought;
mod buying;
mod change;
mod compare;
mod estimate;
mod least;
mod lines;
mod offer;
pub mod outcome;
mod payments;
mod prices;
mod pricing;
pub mod repricing;
mod sections;
mod sensitivity;
mod totals;
mod unit_prices;
mod ways;

pub use bought::{Bought, Priced};
pub use buying::{BuyingRule, effects};
pub use change::{Way, book_for_changes, book_without_trucks, business_for_changes, change_price};
pub use compare::{Books, CauseChange, Joined, Sold, books, join};
pub use estimate::{PriceSaid, estimate};
pub use lines::{Cause, LeastCharge, LineItem, Tier, priced};
pub use offer::{Offer, check_sets, offer, with_choice};
pub use payments::{parts, payments, schedule};
pub use prices::{Prices, prices};
pub use pricing::Pricing;
pub use sections::{OfOne, of_one, sections};
pub use sensitivity::{Estimated, Room, Sensitivity, sensitivity, together};
pub use totals::Totals;
pub use ways::{OtherWay, cheaper, in_mix, in_pour, otherwise, saving, truck_less};
