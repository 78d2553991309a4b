//! Outlines, arcs, scan lines and joint layouts in whole nanometres.
//!
//! East is x, north is y. Areas and crossings are exact in `i128`; a curve's area
//! and length come from its formula in decimal, and where a curve has to be cut
//! it becomes chords once, within 1/32 in. No trade and no money is known here.

pub mod angle;
pub mod arc;
mod chords;
mod compass;
mod cross;
pub mod holes;
pub mod joints;
mod line;
mod moment;
pub mod outline;
mod overlap;
pub mod path;
pub mod point;
pub mod rim;
mod scan;
mod shapes;
pub mod side;
pub mod walk;
#[cfg(test)]
mod walks;
mod within;

pub use angle::Angle;
pub use compass::{Compass, Direction};
pub use holes::HoleError;
pub use outline::Outline;
pub use path::{PathError, PathLeg};
pub use point::Point;
pub use side::Side;
pub use walk::{Leg, WalkError};
