//! Blocks and shapes to pages to PDF bytes.
//!
//! Units are PDF points (72 to the inch), x to the right, y downward from the top
//! left of the page. Nothing here knows of concrete or money, and nothing here
//! reads a clock, a file or a random number: same input, same bytes.

pub mod drawing;
pub mod faces;
pub mod frame;
pub mod layout;
pub mod page;
pub mod pdf;
pub mod photo;
pub mod text;
