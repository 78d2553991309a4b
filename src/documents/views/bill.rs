//! An invoice, a credit or a receipt as finished strings.

use serde::Serialize;

use super::quote::{FileFacts, Firm, Term};

/// What stands at the head of a bill and of a change order.
#[derive(Clone, Debug, Serialize)]
pub struct Head {
    /// "Invoice 3 of 4: The day after the pour"
    pub heading: String,
    /// "Invoice", "Credit", "Change"
    pub word: String,
    /// "Dana Example, 18 Sample Lane, Quillhaven"
    pub customer: String,
    /// "2026-0041-3, June 12, 2026"
    pub number: String,
    /// "Invoice 2026-0041-3, June 12, 2026"
    pub running_head: String,
    /// "$6,090.76"
    pub amount: String,
    /// "Amount due, including sales tax of $344.76"
    pub amount_sentence: String,
    /// "Please pay by June 22, 2026"; of a change order "1 working day more"
    pub pay_by: String,
    pub has_bar: bool,
}

#[derive(Clone, Debug, Serialize)]
pub struct BillView {
    pub file: FileFacts,
    pub firm: Firm,
    #[serde(flatten)]
    pub head: Head,
    pub rows: Vec<BillRow>,
    /// Subtotal, each tax, total.
    pub sums: Vec<BillRow>,
    /// "Agreed and changed", "What it pays"
    pub agreed_heading: String,
    pub agreed: Vec<AmountRow>,
    pub paid: Vec<AmountRow>,
    pub how_to_pay: Vec<Term>,
    pub next: Vec<String>,
    /// How far the work has come, where it is billed by a schedule of values.
    pub progress: Option<ProgressView>,
    /// With a final invoice.
    pub closing: Option<ClosingView>,
}

#[derive(Clone, Debug, Serialize)]
pub struct ProgressView {
    /// "Counted to June 30, 2026"
    pub counted: String,
    pub rows: Vec<ProgressRow>,
    /// Work to date, what is withheld of it, what is earned.
    pub sums: Vec<WithheldRow>,
}

/// One line of a schedule of values; empty amounts are a dash.
#[derive(Clone, Debug, Serialize)]
pub struct ProgressRow {
    pub what: String,
    pub value: String,
    pub before: String,
    pub now: String,
    /// Of `to_date`.
    pub stored: String,
    pub to_date: String,
    /// "40%"
    pub share: String,
    pub left: String,
    pub is_total: bool,
}

#[derive(Clone, Debug, Serialize)]
pub struct WithheldRow {
    pub what: String,
    pub before: String,
    pub now: String,
    pub to_date: String,
    pub is_total: bool,
}

/// The page of the hand-over.
#[derive(Clone, Debug, Serialize)]
pub struct ClosingView {
    /// "Every slab, edge, step and joint, dry and swept."
    pub looked_at: Vec<String>,
    /// "A 10 ft straightedge finds no dip over 1/4 in."
    pub promises: Vec<String>,
    /// "The lid of the gas valve is on order."
    pub to_come: Vec<String>,
    pub dates: Vec<DatedRow>,
}

/// "Poured" and "June 15, 2026".
#[derive(Clone, Debug, Serialize)]
pub struct DatedRow {
    pub what: String,
    pub when: String,
}

/// One row of what a bill is for; empty amounts are a dash.
#[derive(Clone, Debug, Serialize)]
pub struct BillRow {
    /// "1", "C1"
    pub mark: String,
    /// "When you sign"
    pub what: String,
    /// "10%"
    pub share: String,
    pub agreed: String,
    pub before: String,
    pub now: String,
    pub to_date: String,
    pub left: String,
    /// A rule stands above it.
    pub is_total: bool,
}

#[derive(Clone, Debug, Serialize)]
pub struct AmountRow {
    pub what: String,
    pub amount: String,
    pub is_total: bool,
}
