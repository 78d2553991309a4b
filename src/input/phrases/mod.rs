//! Short phrases that mean a value: `7 hours per 100 ft`, `4 in of crushed stone`, `markup 25%`.

mod base;
mod beside;
mod days;
mod fall;
mod leg;
mod pattern;
mod profit;
mod ratio;
mod share;
mod size;
mod steel;

pub use base::BasePhrase;
pub use beside::BesidePhrase;
pub use days::Days;
pub use fall::{Compass, FallPhrase};
pub use leg::LegPhrase;
pub use pattern::{Number, Pattern};
pub use profit::Profit;
pub use ratio::Ratio;
pub use share::Share;
pub use size::{SizePhrase, positive};
pub use steel::BarsPhrase;
