//! Text for the office: never for a customer.

mod summary;

pub use summary::summary;
