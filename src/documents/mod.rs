//! What is priced and recorded to finished strings, and those to pages: views, figures, templates.
//!
//! A view holds only finished strings; a template places them; nothing here
//! computes a price or decides what a job needs.

pub mod billing;
pub mod change;
pub mod column;
mod cost_sheet;
mod error;
pub mod figures;
mod markup;
pub mod offering;
mod pages;
mod repriced;
mod table;
mod template;
pub mod views;

pub use cost_sheet::cost_document;
pub use error::DocumentError;
pub use pages::document;
pub use repriced::{Asked, repriced_document};

#[cfg(test)]
mod cost_tests;
#[cfg(test)]
mod demo;
#[cfg(test)]
mod quote_tests;
