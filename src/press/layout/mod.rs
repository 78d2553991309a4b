//! Blocks to pages on the 12-column grid.
//!
//! Points, x to the right, y downward from the page's top left. A block becomes
//! pieces that are never divided (`compose`); pieces fill columns and pages
//! (`fill`); page numbers and the versions that fit are settled by repeating
//! that until nothing changes (`paginate`). Nothing ever shrinks to fit.

pub mod block;
mod compose;
mod error;
mod fill;
mod flows;
mod mark;
mod paginate;
mod piece;
mod running;
pub mod style;
mod texts;
mod together;

pub use error::LayoutError;
pub use paginate::paginate;

#[cfg(test)]
mod tests;
