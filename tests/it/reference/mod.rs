//! Published worked examples, computed by the program's own quantities.
//!
//! Beside each stands where its figures come from and how far they were seen:
//! a passage of the primary source itself, a secondary page that restates it,
//! or computed here. Where a source slipped, the slip is named and must not
//! come out.

pub mod concrete;
mod dowels;
mod earth;
mod money;
mod placed;
mod sections;
mod shapes;
mod steel;
