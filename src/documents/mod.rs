//! Finished strings to pages: views, templates, the markup between them.
//!
//! A view holds only finished strings; a template places them; nothing here
//! computes a price, formats a number or knows what a slab costs.

pub mod figures;
pub mod views;
