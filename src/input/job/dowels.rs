//! The dowels or ties of a slab: which kind of the price book, how far apart.

use crate::reading::At;
use crate::values::Length;

#[derive(Clone, Debug)]
pub struct Dowels {
    /// A kind the price book has.
    pub kind: At<String>,
    /// The most from one to the next.
    pub spacing: At<Length>,
}
