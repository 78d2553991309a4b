//! What a job is priced with.

use super::prices::Prices;
use crate::input::book::PriceBook;
use crate::input::business::Business;

/// A price book, what it asks on the days of a job, and how the owner orders, works and adds to cost.
#[derive(Clone, Copy, Debug)]
pub struct Pricing<'a> {
    pub book: &'a PriceBook,
    pub business: &'a Business,
    /// For each pour, the prices of its day.
    pub days: &'a [Prices],
}

impl<'a> Pricing<'a> {
    /// The prices of a pour's day, or of the first pour's where something serves the whole job.
    pub fn day(self, pour: Option<usize>, first_pour: usize) -> &'a Prices {
        let pour = pour.unwrap_or(first_pour);
        &self.days[pour.min(self.days.len() - 1)]
    }
}
