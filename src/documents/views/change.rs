//! A change order as finished strings.

use serde::Serialize;

use super::bill::{AmountRow, Head};
use super::quote::{FileFacts, Firm, Term};

#[derive(Clone, Debug, Serialize)]
pub struct ChangeView {
    pub file: FileFacts,
    pub firm: Firm,
    #[serde(flatten)]
    pub head: Head,
    pub because: Option<String>,
    pub work: Vec<WorkView>,
    /// Lines before tax, each tax, total.
    pub price: Vec<AmountRow>,
    pub agreed: Vec<AmountRow>,
    /// "A change is billed with the final invoice."
    pub billed: Option<String>,
    /// "I agree to this change. …"
    pub acceptance: String,
    /// "$14,214.60"
    pub sum: String,
}

/// One part of the work in the words of a quote.
#[derive(Clone, Debug, Serialize)]
pub struct WorkView {
    /// "Added: walk to the shed"
    pub heading: String,
    pub terms: Vec<Term>,
}
