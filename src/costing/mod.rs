//! Needs and prices become lines; every total is a sum of lines.
//!
//! `priced` is the last step that can fail. Nothing here knows a shape.

mod estimate;
mod lines;
mod offer;
mod payments;
mod prices;
mod sections;
mod totals;

pub use estimate::estimate;
pub use lines::{Cause, LineItem, Side, missing, priced};
pub use offer::{Offer, Priced, offer};
pub use payments::{parts, schedule};
pub use prices::{Prices, prices};
pub use sections::{SectionPrice, sections};
pub use totals::Totals;
