//! Words to shaped glyphs, widths and lines.
//!
//! Widths of glyphs are whole thousandths of the size (both bundled faces have
//! 1000 units to the em), so a line's width is the same on every machine.

mod face;
mod lines;
mod rich;
mod shape;

pub use lines::{TextLine, lines};
pub use rich::{Rich, Span, Voice};
pub use shape::{Unshapable, shape, uncovered, width};
