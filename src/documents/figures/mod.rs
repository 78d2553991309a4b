//! Figures: shapes and words in points, drawn from finished values.
//!
//! Nothing is computed here but places on paper; every number shown was decided
//! by a floor above. Floats are at home here.

pub mod cure;
pub mod margin;
pub mod parts;
mod pen;
pub mod plan;
pub mod rise;
