//! `flatwork pay`, `returned`, `refund`: money as it comes and goes.

use std::process::ExitCode;

use super::target::{Case, Entry, Target};
use crate::documents::billing::Billing;
use crate::office::name::Event;
use crate::office::record::{Happened, Payment};
use crate::office::text::Cents;
use crate::outside::{bill_pdf, business_folder};
use crate::reading::{Problems, Sources};
use crate::values::Money;

#[derive(Debug, clap::Args)]
pub(super) struct Pay {
    #[command(flatten)]
    target: Target,
    /// How much, as 1290.02
    #[arg(value_name = "AMOUNT", value_parser = super::money)]
    amount: Money,
    /// How: check 1042, card, cash
    #[arg(long, value_name = "WORDS", default_value = "check")]
    how: String,
    /// The invoice it is for: 2 for 2026-0041-2; else the oldest that is open
    #[arg(long, value_name = "INVOICE")]
    invoice: Option<u32>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Back {
    #[command(flatten)]
    target: Target,
    /// The payment, as `flatwork statement` counts them
    payment: u32,
    /// Why, in a few words
    #[arg(long, value_name = "WORDS")]
    because: String,
}

pub(super) fn pay(arguments: &Pay) -> ExitCode {
    arguments.target.record(false, |case, sources, problems| {
        let left = case.account.owed() - arguments.amount;
        let left = if left < Money::ZERO {
            format!("{} more than is billed so far", -left)
        } else {
            format!("{left} of what is billed is still open")
        };
        let before = case.account.payments.len();
        let said = format!(
            "paid        {} to {}; {left}\n",
            arguments.amount, case.number
        );
        let paper = Paper {
            event: Event::Paid,
            make: bill_pdf::receipt,
            what: Happened::Paid,
        };
        entry(arguments, case, before, said, &paper, sources, problems)
    })
}

pub(super) fn refund(arguments: &Pay) -> ExitCode {
    arguments.target.record(false, |case, sources, problems| {
        let before = case.account.refunds.len();
        let said = format!("refunded    {} of {}\n", arguments.amount, case.number);
        let paper = Paper {
            event: Event::Refunded,
            make: bill_pdf::refund,
            what: Happened::Refunded,
        };
        entry(arguments, case, before, said, &paper, sources, problems)
    })
}

/// Sets the page of a payment.
type Receipt = fn(Billing<'_>, &Payment, &mut Problems) -> Option<Vec<u8>>;

/// Which receipt is written.
struct Paper {
    event: Event,
    make: Receipt,
    what: fn(Payment) -> Happened,
}

/// The payment on record, with its receipt.
fn entry(
    arguments: &Pay,
    case: &Case<'_>,
    before: usize,
    said: String,
    paper: &Paper,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Entry> {
    let (business, input) = business_folder::business(&case.home, sources, problems)?;
    let mut payment = Payment {
        payment: u32::try_from(before).ok()? + 1,
        amount: Cents(arguments.amount),
        how: arguments.how.clone(),
        invoice: arguments.invoice,
        inputs: vec![input],
        pdf: None,
    };
    let made = (paper.make)(case.billing(&business), &payment, problems)?;
    payment.pdf = Some(case.pdf(paper.event, &made)?);
    Some(Entry {
        what: (paper.what)(payment),
        pdf: Some(made),
        said,
    })
}

pub(super) fn returned(arguments: &Back) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        Some(Entry {
            said: format!(
                "returned    payment {} of {}: {}\n",
                arguments.payment, case.number, arguments.because
            ),
            what: Happened::Returned {
                payment: arguments.payment,
                because: arguments.because.clone(),
            },
            pdf: None,
        })
    })
}
