//! What a record holds, as plain text that anybody can read in thirty years.
//!
//! JSON (RFC 8259), one key a line in a fixed order, decimals and days as strings. A record
//! says which rules made its figures; it holds the texts it was made from, so that they can be
//! made again.

/// Parts of a record: plain data, written as it stands and read back with no key more or less.
macro_rules! parts {
    ($($(#[$about:meta])* pub struct $name:ident { $($keys:tt)* })*) => {$(
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        // A record names what it holds twice: in `event`, and as the key of its count.
        #[allow(clippy::struct_field_names)]
        pub struct $name { $($keys)* }
    )*};
}

mod bills;
mod kind;
mod progress;
mod quote;

pub use bills::{
    Bills, Change, ChangeLine, ChangeWork, Closing, Credit, Invoice, Payment, WorkLine,
};
pub use kind::{Event, Happened};
pub use progress::{InvoiceLine, Progress, ProgressLine, Withheld};
pub use quote::{Accepted, ChoiceGroup, Combination, Line, Quote, Replaces, Stage};

use serde::{Deserialize, Serialize};

use super::chain::{self, hash};
use super::text::{Cents, Day};

/// The format of records.
pub const RECORD: u32 = 1;
/// Raised whenever the same input would give another figure than before.
pub const RULES: u32 = 1;

parts! {
    /// One thing that happened to a job.
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

    /// A price and its taxes; the total is their sum and stands beside them for the reader.
    #[derive(Default)]
    pub struct Figures {
        pub price: Cents,
        pub taxes: Vec<TaxAmount>,
        pub total: Cents,
    }

    pub struct TaxAmount {
        pub name: String,
        pub amount: Cents,
    }

    /// A file as it was read.
    pub struct Input {
        pub what: InputKind,
        pub name: String,
        pub sha256: String,
        pub text: String,
    }

    pub struct Pdf {
        pub name: String,
        pub sha256: String,
    }
}

/// Which of its files a record keeps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum InputKind {
    #[serde(rename = "takeoff")]
    Takeoff,
    #[serde(rename = "business")]
    Business,
    #[serde(rename = "price book")]
    PriceBook,
    #[serde(rename = "change")]
    Change,
    #[serde(rename = "schedule of values")]
    ScheduleOfValues,
}

impl Input {
    pub fn new(what: InputKind, name: &str, text: &str) -> Self {
        Self {
            what,
            name: name.to_owned(),
            sha256: hash(text.as_bytes()),
            text: text.to_owned(),
        }
    }
}

impl Pdf {
    pub fn new(name: String, bytes: &[u8]) -> Self {
        Self {
            name,
            sha256: hash(bytes),
        }
    }
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
        Ok((serde_json::from_str(&object)?, seal.to_owned()))
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

impl From<serde_json::Error> for RecordError {
    fn from(error: serde_json::Error) -> Self {
        Self::Content(error.to_string())
    }
}

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
