//! How far a job had come when it was billed, as records hold it.

use crate::office::text::{Cents, Day};
use crate::values::Money;

parts! {
    /// Work to date, what is withheld of it, and how it was a bill ago.
    pub struct Progress {
        /// The last day that is counted.
        pub to: Day,
        pub lines: Vec<ProgressLine>,
        /// `5% of 797,913.03`, or an amount.
        pub retainage: String,
        pub retained: Withheld,
        pub released: Withheld,
        /// Other sums withheld to date.
        pub held_back: Vec<InvoiceLine>,
        pub held_before: Cents,
        /// Work to date less what is withheld of it, before tax.
        pub earned: Cents,
    }

    /// A sum by name.
    pub struct InvoiceLine {
        pub says: String,
        pub price: Cents,
    }

    /// A sum to date, and to the bill before.
    #[derive(Copy, Default)]
    pub struct Withheld {
        pub before: Cents,
        pub to_date: Cents,
    }

    pub struct ProgressLine {
        pub says: String,
        pub value: Cents,
        /// Work and stored materials of the bill before.
        pub before: Cents,
        pub done: Cents,
        pub stored: Cents,
        pub bears_retainage: bool,
    }
}

impl ProgressLine {
    /// Work in place and materials stored.
    pub fn to_date(&self) -> Money {
        self.done.0 + self.stored.0
    }
}

impl InvoiceLine {
    pub fn new(says: impl Into<String>, price: Money) -> Self {
        Self {
            says: says.into(),
            price: Cents(price),
        }
    }
}
