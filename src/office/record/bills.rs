//! Change orders, invoices, credits and money, as records hold them.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::progress::{InvoiceLine, Progress};
use super::{Figures, Input, Line, Pdf};
use crate::office::text::{Cents, Day};

parts! {
    /// More or less work than was signed.
    pub struct Change {
        pub change: u32,
        pub title: String,
        pub because: Option<String>,
        /// What the customer reads of it.
        pub lines: Vec<ChangeLine>,
        pub figures: Figures,
        /// What it costs, for the office.
        pub work: Vec<ChangeWork>,
        /// Working days more, or fewer.
        pub days: i32,
        /// The day whose prices count where the work names no pour.
        pub priced: Day,
        /// The change order, the business and the price book, word for word.
        pub inputs: Vec<Input>,
        pub pdf: Option<Pdf>,
    }

    pub struct ChangeLine {
        pub says: String,
        /// Before tax; below zero where it is taken off.
        pub price: Cents,
        /// What will be done, or no longer done, in the words of a quote.
        pub work: Vec<WorkLine>,
    }

    /// A word and what it says: `Finish` and `broom`.
    pub struct WorkLine {
        pub word: String,
        pub text: String,
    }

    /// Work that a change adds or leaves out, and every line of its price.
    pub struct ChangeWork {
        pub is_deducted: bool,
        pub cost: Cents,
        pub price: Cents,
        pub lines: Vec<Line>,
    }

    /// A bill.
    pub struct Invoice {
        pub invoice: u32,
        pub bills: Bills,
        pub lines: Vec<InvoiceLine>,
        pub figures: Figures,
        pub due: Day,
        /// What the page of the hand-over says, with a final invoice.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        pub closing: Option<Closing>,
        /// The business as it was, word for word.
        pub inputs: Vec<Input>,
        pub pdf: Option<Pdf>,
    }

    /// What is still to come when a job is handed over.
    pub struct Closing {
        /// The day of the last pour.
        pub poured: Day,
        /// The first day for a sealer.
        pub seal: Day,
        pub is_sealed_by_us: bool,
        /// What waits for its lid, as the customer reads it.
        pub lids: Vec<String>,
        /// Those of the business when the quote went out.
        pub promises: Vec<String>,
    }

    /// Less owed than was billed.
    pub struct Credit {
        pub credit: u32,
        pub invoice: u32,
        pub because: String,
        pub figures: Figures,
        /// The business as it was, word for word.
        pub inputs: Vec<Input>,
        pub pdf: Option<Pdf>,
    }

    /// Money that came in, or went back.
    pub struct Payment {
        pub payment: u32,
        pub amount: Cents,
        /// `check 1042`, `card`, `cash` and the like.
        pub how: String,
        /// The invoice it was meant for; none goes to the oldest first.
        pub invoice: Option<u32>,
        /// The business as it was, word for word.
        pub inputs: Vec<Input>,
        /// The receipt.
        pub pdf: Option<Pdf>,
    }
}

/// What an invoice is for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Bills {
    /// A payment of the schedule, from 0.
    Stage(usize),
    /// Work to date by a schedule of values, less what was billed.
    Progress(Box<Progress>),
    /// Contract and changes, less what was billed.
    Final,
}

impl ChangeWork {
    /// In percent of the price, where there is one.
    pub fn margin(&self) -> Option<Decimal> {
        let (cost, price) = (self.cost.0.dollars(), self.price.0.dollars());
        (Decimal::ZERO < price).then(|| (price - cost) / price * Decimal::ONE_HUNDRED)
    }
}
