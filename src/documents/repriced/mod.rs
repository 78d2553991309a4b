//! From re-priced quotes to the office's page: finished strings, and a bar for each quote.
//!
//! Sums and verdicts are those of the text answer (`views::office::reprice`).

mod beside;
mod causes;
mod lines;

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use self::beside::beside;
use self::lines::{figures, quote};
use super::error::DocumentError;
use super::pages::document;
use super::views::office::{OFFICE_PAGE, counted};
use super::views::quote::FileFacts;
use super::views::reprice_page::{Exposure, RepricePage};
use crate::costing::outcome::{Finding, Outcomes, exposure};
use crate::costing::repricing::Supposed;
use crate::press::drawing::{Drawing, Rgb};
use crate::press::page::Document;
use crate::values::{Day, Money, Percent};

/// What was asked, in the owner's names.
#[derive(Clone, Debug)]
pub struct Asked {
    pub today: Day,
    /// The names of the books, each once.
    pub books: Vec<String>,
    /// Whether the owner named the book.
    pub another: bool,
    /// Items as the book calls them, and their other prices.
    pub supposed: Vec<(String, Supposed)>,
}

/// The pages of the answer, for the office.
pub fn repriced_document(
    answer: &Outcomes,
    asked: &Asked,
    accent: Rgb,
) -> Result<Document, DocumentError> {
    let (view, figures) = page(answer, asked, accent);
    document(&view, &figures)
}

fn page(answer: &Outcomes, asked: &Asked, accent: Rgb) -> (RepricePage, BTreeMap<String, Drawing>) {
    let findings = answer.findings(asked.today);
    let notes = findings.iter().flat_map(|one| {
        let notes = one.quote.notes.iter();
        notes.map(|words| (one.quote.number.as_str(), words.as_str()))
    });
    let day = asked.today.long();
    let causes = answer.together();
    let view = RepricePage {
        file: FileFacts {
            title: format!("Quotes at other prices, for the office: {day}"),
            subject:
                "What open quotes and signed work cost now, for the office and not for the customer"
                    .to_owned(),
            language: "en-US".to_owned(),
            created: asked.today.noon(),
        },
        warning: OFFICE_PAGE,
        beside: format!("Quotes at other prices, {day}"),
        title: if asked.another || !asked.supposed.is_empty() {
            "What our quotes would cost"
        } else {
            "What our quotes cost now"
        },
        facts: facts(asked),
        exposures: vec![of_standing(&findings, true), of_standing(&findings, false)],
        quotes: findings.iter().enumerate().map(quote).collect(),
        no_quotes: if findings.is_empty() {
            "There is no quote to price: none is open, and no signed work waits for its pour."
        } else {
            ""
        },
        causes_note: if causes.is_empty() {
            "Nothing changed: every quote costs what it cost when it was quoted."
        } else {
            "How much all totals would change if each were quoted anew by your own rules: profit and tax are in it, unlike in the costs above."
        },
        causes: causes::versions(&causes),
        notes: beside(notes),
        left_out: beside(answer.left_out().into_iter()),
    };
    (view, figures(&findings, accent))
}

/// The day, the books and the supposition in plain words.
fn facts(asked: &Asked) -> String {
    let books = asked.books.join(" and ");
    let which = match (asked.another, asked.books.len()) {
        (true, _) => format!("in another book, {books}"),
        (false, 0 | 1) => format!("in your usual book as it is now, {books}"),
        (false, _) => format!("in the usual books as they are now, {books}"),
    };
    let said = format!(
        "Asked {}. Every job at the prices of its pour day, {which}.",
        asked.today.long()
    );
    if asked.supposed.is_empty() {
        return said;
    }
    let each = asked.supposed.iter().map(|(item, other)| match other {
        Supposed::Price(price) => format!("{item}: ${price}"),
        Supposed::By(percent) if percent.number() < Decimal::ZERO => {
            format!("{item}: down {}", Percent::new(-percent.number()))
        }
        Supposed::By(percent) => format!("{item}: up {percent}"),
    });
    let each = each.collect::<Vec<_>>().join("; ");
    format!("{said} Supposed: {each}; a price that is held for you stays.")
}

/// What quotes of one standing cost more, and how many of them bleed.
fn of_standing(findings: &[Finding<'_>], open: bool) -> Exposure {
    let by = exposure(findings, open);
    let (whose, one, many) = if open {
        ("Open quotes cost", "open quote", "open quotes")
    } else {
        (
            "Signed work, not yet poured, costs",
            "signed job",
            "signed jobs",
        )
    };
    let (more, amount) = if by < Money::ZERO {
        ("less", -by)
    } else {
        ("more", by)
    };
    let of = || findings.iter().filter(|one| one.is_open() == open);
    let (all, below) = (
        of().count(),
        of().filter(|one| one.is_below_floor()).count(),
    );
    let counted = counted(all, one, many);
    Exposure {
        label: format!("{whose} you {more} by"),
        amount: amount.to_string(),
        note: match (all, below) {
            (0, _) => format!("no {many}"),
            (_, 0) => format!("{counted}, none below your floor"),
            _ => format!("{counted}, {below} below your floor"),
        },
    }
}
