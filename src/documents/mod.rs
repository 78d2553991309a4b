//! Finished strings to pages: views, figures, templates, the markup between them.
//!
//! A view holds only finished strings; a template places them; nothing here
//! computes a price or decides what a job needs.

pub mod billing;
pub mod change;
pub mod column;
mod cost_sheet;
pub mod error;
pub mod figures;
pub mod markup;
pub mod offering;
mod pages;
mod quote;
mod repriced;
pub mod table;
pub mod template;
pub mod views;

pub use cost_sheet::cost_document;
pub use error::DocumentError;
pub use quote::{bill_document, quote_document, quote_document_in};
pub use repriced::{Asked, repriced_document};

#[cfg(test)]
mod cost_tests;
#[cfg(test)]
mod quote_tests;
