//! Finished strings to pages: views, figures, templates, the markup between them.
//!
//! A view holds only finished strings; a template places them; nothing here
//! computes a price or decides what a job needs.

pub mod billing;
pub mod change;
mod cost;
pub mod cost_sheet;
pub mod error;
pub mod figures;
pub mod markup;
pub mod offering;
mod pages;
mod quote;
mod repriced;
pub mod template;
pub mod views;

pub use cost::cost_document;
pub use error::DocumentError;
pub use quote::{bill_document, quote_document, quote_document_in};
pub use repriced::{Asked, repriced_document};

#[cfg(test)]
mod cost_tests;
#[cfg(test)]
mod demo;
#[cfg(test)]
mod quote_tests;
