//! `flatwork pay`, `returned`, `refund`: money as it comes and goes.

use std::process::ExitCode;

use super::target::{Case, Entry, Target};
use crate::office::record::{Payment, What};
use crate::office::text::Cents;
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
    arguments.target.record(false, |case, _, _| {
        let owed = case.account.owed();
        let left = owed - arguments.amount;
        let left = if left < Money::ZERO {
            format!("{} more than is billed so far", -left)
        } else {
            format!("{left} of what is billed is still open")
        };
        Some(Entry {
            said: format!(
                "paid        {} to {}; {left}\n",
                arguments.amount, case.number
            ),
            what: What::Paid(payment(arguments, received(case))),
            pdf: None,
        })
    })
}

pub(super) fn refund(arguments: &Pay) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        let count = u32::try_from(case.account.refunds.len()).ok()?;
        Some(Entry {
            said: format!("refunded    {} of {}\n", arguments.amount, case.number),
            what: What::Refunded(payment(arguments, count)),
            pdf: None,
        })
    })
}

pub(super) fn returned(arguments: &Back) -> ExitCode {
    arguments.target.record(false, |case, _, _| {
        Some(Entry {
            said: format!(
                "returned    payment {} of {}: {}\n",
                arguments.payment, case.number, arguments.because
            ),
            what: What::Returned {
                payment: arguments.payment,
                because: arguments.because.clone(),
            },
            pdf: None,
        })
    })
}

fn received(case: &Case<'_>) -> u32 {
    u32::try_from(case.account.payments.len()).expect("no job has that many payments")
}

fn payment(arguments: &Pay, before: u32) -> Payment {
    Payment {
        payment: before + 1,
        amount: Cents(arguments.amount),
        how: arguments.how.clone(),
        invoice: arguments.invoice,
    }
}
