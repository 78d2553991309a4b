//! Finished strings to pages: views, templates, the markup between them.
//!
//! A view holds only finished strings; a template places them; nothing here
//! computes a price, formats a number or knows what a slab costs.

pub mod error;
pub mod markup;
mod quote;
pub mod template;
pub mod views;

pub use error::DocumentError;
pub use quote::{quote_document, quote_document_in};

#[cfg(test)]
mod quote_tests;
