//! Text from outside becomes a tree with places, then values, or every problem at once.
//!
//! Places are byte ranges into a text kept in [`Sources`]. A scalar is the text as it was
//! written, so `12.50` never passes through a float. A bad value costs one value: the
//! reader reports it into [`Problems`] and goes on. Nothing here knows the trade, opens a
//! file or panics on any input.

pub mod caret;
pub mod fields;
#[cfg(feature = "inside")]
pub mod guide;
pub mod keys;
mod named;
pub mod place;
pub mod problem;
pub mod suggest;
pub mod tree;
pub mod utf8;
mod walk;
pub(crate) mod words;
pub mod written;
pub mod yaml;

pub use fields::{Below, Field, FieldTable, Fields, IfLeftOut};
pub use keys::{FormatOne, FromKey, FromLine, Given, Group, Keyed, Unread, WithAnother};
pub use named::{BrokenNames, Named};
pub use place::{At, FileId, Place, Sources};
pub use problem::{Problem, Problems, Read, Reported};
pub use tree::{Entry, Node, Value};
pub(crate) use words::words;
pub use written::Written;
