//! Short phrases that mean a value: `7 hours per 100 ft`, `4 in of crushed stone`, `markup 25%`.

mod base;
mod beside;
mod border;
mod days;
mod dose;
mod fall;
mod leg;
mod pattern;
mod profit;
mod ratio;
mod season;
mod share;
mod size;
mod steel;
mod steps;
mod thickened;
mod thickness;

pub use base::BasePhrase;
pub use beside::BesidePhrase;
pub use border::BorderPhrase;
pub use days::Days;
pub use dose::Dose;
pub use fall::{Compass, FallPhrase};
pub use leg::LegPhrase;
pub use pattern::{Number, Pattern};
pub use profit::Profit;
pub use ratio::Ratio;
pub use season::Season;
pub use share::Share;
pub use size::{SizePhrase, positive};
pub use steel::BarsPhrase;
pub use steps::{FromEnd, Risers, StepsPhrase, StoopPhrase};
pub use thickened::{EdgeBars, EdgeName, EdgeSort, EdgesPhrase, ThickenedPhrase};
pub use thickness::ThicknessPhrase;
