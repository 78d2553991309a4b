//! What a record holds, as plain text that anybody can read in thirty years.
//!
//! JSON (RFC 8259), one key a line in a fixed order, decimals and days as strings. A record
//! says which rules made its figures; it holds the texts it was made from, so that they can be
//! made again.

mod bills;
mod progress;

pub use bills::{
    Bills, Change, ChangeLine, ChangeWork, Closing, Credit, Invoice, InvoiceLine, Payment, WorkLine,
};
pub use progress::{Progress, ProgressLine, Withheld};

use serde::{Deserialize, Serialize};

use super::chain;
use super::name::Event;
use super::text::{Cents, Day, Number};

/// The format of records.
pub const RECORD: u32 = 1;
/// Raised whenever the same input would give another figure than before.
pub const RULES: u32 = 1;

/// One thing that happened to a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Record {
    pub record: u32,
    pub rules: u32,
    /// The program that wrote it, with its version.
    pub program: String,
    pub number: String,
    /// From 1, in the order things happened to this job.
    pub place: u32,
    /// The day it counts from, as said by whoever wrote it.
    pub day: Day,
    /// The seal of the job's record before this one; of a first record, the seal of the first
    /// record of the number before. None where there is none.
    pub previous: Option<String>,
    pub what: Happened,
}

/// What happened, with all that is needed to prove it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "event", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Happened {
    Quote(Box<Quote>),
    Accepted(Accepted),
    /// By the customer, after signing.
    Cancelled {
        because: String,
        /// The last day to pay back what was paid, where the law gives one.
        refund_by: Option<Day>,
    },
    Declined {
        because: String,
        /// Only this change order, the job goes on.
        change: Option<u32>,
    },
    Withdrawn {
        because: String,
    },
    Postponed {
        because: String,
        until: Option<Day>,
    },
    Change(Box<Change>),
    ChangeAccepted {
        change: u32,
        by: String,
        how: String,
    },
    Invoice(Box<Invoice>),
    Voided {
        invoice: u32,
        because: String,
    },
    Credit(Box<Credit>),
    Paid(Payment),
    Returned {
        payment: u32,
        because: String,
    },
    Refunded(Payment),
}

impl Happened {
    pub fn event(&self) -> Event {
        match self {
            Self::Quote(_) => Event::Quote,
            Self::Accepted(_) => Event::Accepted,
            Self::Cancelled { .. } => Event::Cancelled,
            Self::Declined { .. } => Event::Declined,
            Self::Withdrawn { .. } => Event::Withdrawn,
            Self::Postponed { .. } => Event::Postponed,
            Self::Change(_) => Event::Change,
            Self::ChangeAccepted { .. } => Event::ChangeAccepted,
            Self::Invoice(invoice) => invoice.bills.event(),
            Self::Voided { .. } => Event::Voided,
            Self::Credit(_) => Event::Credit,
            Self::Paid(_) => Event::Paid,
            Self::Returned { .. } => Event::Returned,
            Self::Refunded(_) => Event::Refunded,
        }
    }

    /// The PDF that belongs to it.
    pub fn pdf(&self) -> Option<&Pdf> {
        match self {
            Self::Quote(quote) => Some(&quote.pdf),
            Self::Change(change) => change.pdf.as_ref(),
            Self::Invoice(invoice) => invoice.pdf.as_ref(),
            Self::Credit(credit) => credit.pdf.as_ref(),
            Self::Paid(payment) | Self::Refunded(payment) => payment.pdf.as_ref(),
            Self::Accepted(_)
            | Self::Cancelled { .. }
            | Self::Declined { .. }
            | Self::Withdrawn { .. }
            | Self::Postponed { .. }
            | Self::ChangeAccepted { .. }
            | Self::Voided { .. }
            | Self::Returned { .. } => None,
        }
    }
}

/// A quote as it went out.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Quote {
    pub revision: u32,
    pub job: String,
    pub title: String,
    pub customer: String,
    pub address: Option<String>,
    /// The kinds of slab in it, for the win rate by kind of work.
    pub kinds: Vec<String>,
    pub good_until: Day,
    /// One day for each pour.
    pub pours: Vec<Day>,
    pub choices: Vec<ChoiceGroup>,
    /// The combination that is the job as quoted.
    pub as_quoted: Vec<usize>,
    pub combinations: Vec<Combination>,
    pub payments: Vec<Stage>,
    /// The share of the price below which the owner wants to be told.
    pub margin_floor: Number,
    /// The most of the total that may be asked at signing.
    pub deposit_cap: Number,
    pub deposit_limit: Option<Cents>,
    /// Whole files, word for word: takeoff, business, price book.
    /// The quote whose place it takes, where the customer is told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub replaces: Option<Replaces>,
    pub inputs: Vec<Input>,
    /// Every string the customer reads.
    pub view: serde_json::Value,
    pub pdf: Pdf,
}

impl Quote {
    /// The combination that is the job as quoted.
    pub fn quoted(&self) -> Option<&Combination> {
        let mut all = self.combinations.iter();
        all.find(|one| one.choice == self.as_quoted)
    }
}

/// A quote that went out before: its day, and its total as quoted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Replaces {
    pub day: Day,
    pub total: Cents,
}

/// What the customer could choose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ChoiceGroup {
    pub question: Option<String>,
    /// One answer has to be taken.
    pub must_choose: bool,
    pub options: Vec<String>,
}

/// One combination of options and every line of its price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Combination {
    pub choice: Vec<usize>,
    pub taken: Vec<String>,
    pub cost: Cents,
    pub figures: Figures,
    pub lines: Vec<Line>,
}

/// A price and its taxes; the total is their sum and stands beside them for the reader.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Figures {
    pub price: Cents,
    pub taxes: Vec<TaxAmount>,
    pub total: Cents,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TaxAmount {
    pub name: String,
    pub amount: Cents,
}

/// One line of a cost or a price, with its working in words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Line {
    pub cause: String,
    pub side: String,
    pub class: Option<String>,
    pub item: Option<String>,
    pub quantity: Option<Number>,
    pub unit: Option<String>,
    /// The pour for whose day it is bought, from 0, where the job has several.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pour: Option<usize>,
    pub price: Option<Number>,
    /// The first day of the price, or of the hold.
    pub priced: Option<Day>,
    pub held_until: Option<Day>,
    pub amount: Cents,
    pub working: String,
}

/// One payment of the schedule, for the job as quoted.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stage {
    pub when: String,
    /// As the owner wrote it: `10%`, `1/3`, `500.00`, `rest`.
    pub share: String,
}

/// A file as it was read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Input {
    /// `takeoff`, `business`, `price book` or `photo`.
    pub what: String,
    pub name: String,
    pub sha256: String,
    /// Empty for a picture, which is kept by its hash.
    pub text: String,
}

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pdf {
    pub name: String,
    pub sha256: String,
}

/// The customer's yes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Accepted {
    pub revision: u32,
    pub by: String,
    /// `signed on paper`, `by mail` and the like.
    pub how: String,
    pub choice: Vec<usize>,
    pub taken: Vec<String>,
    pub contract: Figures,
    /// The last day on which the customer may cancel, where the owner's law gives one.
    pub cancel_until: Option<Day>,
}

impl Record {
    /// The record as it is kept, sealed.
    pub fn to_text(&self) -> String {
        let object = serde_json::to_string_pretty(self).expect("a record is plain data");
        chain::sealed(&object)
    }

    /// Reads a record back.
    ///
    /// # Errors
    /// When the seal does not fit the text, or the text is no record of this format.
    pub fn from_text(text: &str) -> Result<(Self, String), RecordError> {
        let seal = chain::seal(text).ok_or(RecordError::Seal)?;
        let open = text.len() - seal.len() - "\"\n}\n".len() - ",\n  \"seal\": \"".len();
        let mut object = text[..open].to_owned();
        object.push_str("\n}");
        serde_json::from_str(&object)
            .map(|record| (record, seal.to_owned()))
            .map_err(|error| RecordError::Content(error.to_string()))
    }
}

/// Why a text is no record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RecordError {
    /// Some of it was changed or lost since it was written.
    Seal,
    /// It is sealed and still not of this format.
    Content(String),
}

impl std::fmt::Display for RecordError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Seal => out.write_str("it was changed or cut short after it was written"),
            Self::Content(reason) => write!(out, "this program cannot read it: {reason}"),
        }
    }
}

impl std::error::Error for RecordError {}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values::Money;

    #[test]
    fn a_record_reads_back_as_it_was_written() {
        let record = Record {
            record: RECORD,
            rules: RULES,
            program: "flatwork 0.1.0".into(),
            number: "2026-0041".into(),
            place: 3,
            day: Day("2026-05-04".parse().unwrap()),
            previous: None,
            what: Happened::Paid(Payment {
                payment: 1,
                amount: Cents(Money::cents(-281_960)),
                how: "check \"1042\"\n".into(),
                invoice: None,
                inputs: Vec::new(),
                pdf: None,
            }),
        };
        let text = record.to_text();
        assert_eq!(Record::from_text(&text).map(|(read, _)| read), Ok(record));
        assert!(text.contains("\"amount\": \"-2819.60\""), "{text}");
        let changed = text.replace("2819.60", "2919.60");
        assert_eq!(Record::from_text(&changed), Err(RecordError::Seal));
    }
}
