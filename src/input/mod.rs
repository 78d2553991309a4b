//! What the owner writes: the business, the price book, the job, what changes in it, how far it is.
//!
//! Every reader walks a tree that knows its places and reports every problem it
//! meets; what could not be read is left out, so one bad value costs one value.

pub mod book;
pub mod business;
pub mod change;
mod checks;
pub mod job;
pub mod phrases;
pub mod progress;
pub mod sections;
mod signed;
pub mod site;
mod slab_values;
