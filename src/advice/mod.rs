//! Advice: finished values held against published rules and the owner's limits.
//!
//! One question a file, read-only, each with its source. Advice never blocks a
//! quote, and never claims to be engineering or law: local codes, the supplier
//! and licensed practice decide.

use crate::costing::{Offer, Prices};
use crate::input::book::PriceBook;
use crate::input::business::Business;
use crate::input::job::Takeoff;
use crate::reading::Problem;
use crate::values::Day;

/// Everything a question may look at.
#[derive(Clone, Copy, Debug)]
pub struct Case<'a> {
    pub takeoff: &'a Takeoff,
    pub business: &'a Business,
    pub book: &'a PriceBook,
    pub offer: &'a Offer,
    /// For each pour, the prices of its day.
    pub days: &'a [Prices],
    pub quoted: Day,
}

/// Asks every question, in reading order; an answer is a problem shown as advice, with its place and source.
pub fn advice(case: Case<'_>) -> Vec<Problem> {
    QUESTIONS
        .iter()
        .flat_map(|question| question(case))
        .collect()
}

/// A question looks at the finished job and says what it would ask the owner to look at.
type Question = fn(Case<'_>) -> Vec<Problem>;

const QUESTIONS: &[Question] = &[];
