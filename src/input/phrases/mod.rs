//! Short phrases that mean a value: `7 hours per 100 ft`, `4 in of crushed stone`, `markup 25%`.

mod adjust;
mod base;
mod beside;
mod days;
mod fall;
mod leg;
mod opening;
mod pounds;
mod profit;
mod ratio;
mod season;
mod share;
mod size;
mod slope;
mod spot;
mod steel;

pub use adjust::Adjust;
pub use base::BasePhrase;
pub use beside::BesidePhrase;
pub use days::Days;
pub use fall::{Compass, FallPhrase};
pub use leg::LegPhrase;
pub use opening::Opening;
pub use pounds::Pounds;
pub use profit::Profit;
pub use ratio::Ratio;
pub use season::Season;
pub use share::Share;
pub use size::{SizePhrase, positive};
pub use slope::Slope;
pub use spot::SpotPhrase;
pub use steel::BarsPhrase;
