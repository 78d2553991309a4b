//! Short phrases that mean a value: `7 hours per 100 ft`, `4 in of crushed stone`, `markup 25%`.

mod base;
mod beside;
mod corner;
mod days;
mod fall;
mod leg;
mod profit;
mod ratio;
mod season;
mod shape;
mod share;
mod side;
mod size;
mod spot;
mod steel;
mod steps;
mod thickened;
mod thickness;

pub use base::BasePhrase;
pub use beside::BesidePhrase;
pub use corner::CornerPhrase;
pub use days::Days;
pub use fall::{Compass, FallPhrase};
pub use leg::{LegPhrase, Way};
pub use profit::Profit;
pub use ratio::Ratio;
pub use season::Season;
pub use shape::ShapePhrase;
pub use share::Share;
pub use side::Along;
pub use size::{SizePhrase, positive};
pub use spot::SpotPhrase;
pub use steel::BarsPhrase;
pub use steps::{FromEnd, Risers, StepsPhrase, StoopPhrase};
pub use thickened::{EdgeBars, EdgeName, EdgeSort, EdgesPhrase, ThickenedPhrase};
pub use thickness::ThicknessPhrase;
