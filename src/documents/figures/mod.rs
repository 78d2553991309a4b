//! Figures on the page: drawn in points, never computing a quantity.

pub mod plan;
