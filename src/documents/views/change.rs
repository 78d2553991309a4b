//! A change order as finished strings.

use serde::Serialize;

use super::bill::AmountRow;
use super::quote::{FileFacts, Firm, Term};

#[derive(Clone, Debug, Serialize)]
pub struct ChangeView {
    pub file: FileFacts,
    pub firm: Firm,
    /// "Change 1: A walk to the shed"
    pub heading: String,
    /// "Change"
    pub word: String,
    /// "Dana Example, 18 Sample Lane, Quillhaven"
    pub customer: String,
    /// "2026-0041-C1, June 12, 2026"
    pub number: String,
    /// "Change 2026-0041-C1, June 12, 2026"
    pub running_head: String,
    /// "$1,314.40"
    pub amount: String,
    /// "Added to the agreed sum, including sales tax of $74.40"
    pub amount_sentence: String,
    /// "1 working day more": stands in the place where a bill says when to pay.
    pub pay_by: String,
    /// A change order has no bar.
    pub has_bar: bool,
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
