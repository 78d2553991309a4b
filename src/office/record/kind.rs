//! The kinds of record: each declared once, with its word in names and texts and all that proves it.

use serde::{Deserialize, Serialize};

use super::{Accepted, Bills, Change, Credit, Input, Invoice, Payment, Pdf, Quote};
use crate::office::text::Day;
use crate::reading::words;

/// From one line a kind: what it holds, its event, and the word of both.
macro_rules! kinds {
    ($(
        $(#[$about:meta])*
        $kind:ident $(($held:ty))? $({ $($keys:tt)* })? = $word:literal $(or $last:ident = $last_word:literal)?;
    )*) => {
        /// What happened, with all that is needed to prove it.
        #[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
        #[serde(tag = "event", deny_unknown_fields)]
        pub enum Happened {
            $($(#[$about])* #[serde(rename = $word)] $kind $(($held))? $({ $($keys)* })?,)*
        }

        words! {
            /// What a record says has happened, by the word in its name.
            pub enum Event {
                $($kind $word; $($last $last_word;)?)*
            }
        }

        impl Happened {
            pub fn event(&self) -> Event {
                match self {
                    $($(Self::$kind { .. } if self.is_last_bill() => Event::$last,)?
                    Self::$kind { .. } => Event::$kind,)*
                }
            }
        }
    };
}

kinds! {
    Quote(Box<Quote>) = "quote";
    Accepted(Accepted) = "accepted";
    /// By the customer, after signing.
    Cancelled {
        because: String,
        /// The last day to pay back what was paid, where the law gives one.
        refund_by: Option<Day>,
    } = "cancelled";
    Declined {
        because: String,
        /// Only this change order, the job goes on.
        change: Option<u32>,
    } = "declined";
    Withdrawn { because: String } = "withdrawn";
    Postponed { because: String, until: Option<Day> } = "postponed";
    Change(Box<Change>) = "change";
    ChangeAccepted { change: u32, by: String, how: String } = "change-accepted";
    // The last bill of a job has a word of its own, so that the names tell that the job is done.
    Invoice(Box<Invoice>) = "invoice" or FinalInvoice = "final-invoice";
    Voided { invoice: u32, because: String } = "voided";
    Credit(Box<Credit>) = "credit";
    Paid(Payment) = "paid";
    Returned { payment: u32, because: String } = "returned";
    Refunded(Payment) = "refunded";
}

/// What is asked of every record that has a page for the customer; none of the others.
macro_rules! on_paper {
    ($what:expr, $one:ident => $asked:expr) => {
        match $what {
            Happened::Quote($one) => Some($asked),
            Happened::Change($one) => Some($asked),
            Happened::Invoice($one) => Some($asked),
            Happened::Credit($one) => Some($asked),
            Happened::Paid($one) | Happened::Refunded($one) => Some($asked),
            Happened::Accepted(_)
            | Happened::Cancelled { .. }
            | Happened::Declined { .. }
            | Happened::Withdrawn { .. }
            | Happened::Postponed { .. }
            | Happened::ChangeAccepted { .. }
            | Happened::Voided { .. }
            | Happened::Returned { .. } => None,
        }
    };
}

impl Happened {
    /// The PDF that belongs to it.
    pub fn pdf(&self) -> Option<&Pdf> {
        on_paper!(self, one => one.pdf.as_ref()).flatten()
    }

    /// The files its page is made of, word for word.
    pub fn inputs(&self) -> &[Input] {
        on_paper!(self, one => one.inputs.as_slice()).unwrap_or_default()
    }

    /// With the PDF of its page.
    pub fn put_on_paper(&mut self, pdf: Pdf) {
        on_paper!(self, one => one.pdf = Some(pdf));
    }

    fn is_last_bill(&self) -> bool {
        matches!(self, Self::Invoice(invoice) if invoice.bills == Bills::Final)
    }
}
