//! Everything the office's page of re-priced quotes says, as finished strings; nobody else gets it.
//!
//! A plain contract like the cost sheet's: the template only places the strings, and what
//! is empty closes up.

use serde::Serialize;

use super::quote::FileFacts;

/// The page, top to bottom.
#[derive(Clone, Debug, Serialize)]
pub struct RepricePage {
    pub file: FileFacts,
    /// "For the office – not for the customer": on every page.
    pub warning: &'static str,
    /// "Quotes at other prices, May 4, 2026": at the right end of the band.
    pub beside: String,
    /// "What our quotes cost now"
    pub title: &'static str,
    /// "Asked May 4, 2026. Every job at the prices of its pour day, in …"
    pub facts: String,
    /// Of open quotes, of signed work.
    pub exposures: Vec<Exposure>,
    /// The most harm first.
    pub quotes: Vec<QuoteRow>,
    /// What stands in place of the quotes where there is none.
    pub no_quotes: &'static str,
    /// Versions of one table: the first that fits the page stands there, else the last.
    pub causes: Vec<Vec<CauseRow>>,
    /// What the sum of the causes is, or that there is none.
    pub causes_note: &'static str,
    /// Holds that end too early, units that changed.
    pub notes: Vec<Beside>,
    /// What could not be priced, and why.
    pub left_out: Vec<Beside>,
}

#[derive(Clone, Debug, Serialize)]
pub struct Exposure {
    /// "Open quotes cost you more by"
    pub label: String,
    /// "$1,002.28"
    pub amount: String,
    /// "6 open quotes, 2 below your floor"
    pub note: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct QuoteRow {
    /// "2026-0041"
    pub number: String,
    pub customer: String,
    /// Until the quote ends; an en dash where it is signed.
    pub days_left: String,
    pub old_cost: String,
    pub new_cost: String,
    pub promised: String,
    pub new_price: String,
    /// "16.40%", if the promised price is held.
    pub margin: String,
    /// "hold the price"
    pub verdict: String,
    /// Below the floor: in bold.
    pub bleeds: bool,
    /// The name of its bar; empty where there is no margin.
    pub bar: String,
}

#[derive(Clone, Debug, Serialize)]
pub struct CauseRow {
    /// `group` for the first of a group, `total` for the sum.
    pub kind: &'static str,
    /// "Prices" on the first line of a group, else empty.
    pub group: String,
    /// "Ready-mix, 4,000 psi, with air"
    pub cause: String,
    /// "material"
    pub class: &'static str,
    /// "5 quotes"
    pub quotes: String,
    pub sum: String,
}

/// Words that belong to some quotes.
#[derive(Clone, Debug, Serialize)]
pub struct Beside {
    /// "2026-0041, 2026-0042"
    pub numbers: String,
    pub words: String,
}
