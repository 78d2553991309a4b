//! `flatwork pay`, `returned`, `refund`: money as it comes and goes.

use super::ran::Ran;
use super::target::{Entry, Target};
use crate::office::account::Account;
use crate::office::invoicing::after;
use crate::office::record::{Happened, Payment};
use crate::office::text::Cents;
use crate::outside::files::Files;
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

pub(super) fn pay(arguments: &Pay, files: &mut Files) -> Ran {
    arguments.record(files, Happened::Paid, |account| account.payments.len())
}

pub(super) fn refund(arguments: &Pay, files: &mut Files) -> Ran {
    arguments.record(files, Happened::Refunded, |account| account.refunds.len())
}

impl Pay {
    fn record(
        &self,
        files: &mut Files,
        what: fn(Payment) -> Happened,
        before: fn(&Account<'_>) -> usize,
    ) -> Ran {
        self.target.record(false, files, |case, files| {
            let (business, input) = case.business(files)?;
            let payment = Payment {
                payment: after(before(case.job.account)),
                amount: Cents(self.amount),
                how: self.how.clone(),
                invoice: self.invoice,
                inputs: vec![input],
                pdf: None,
            };
            Ok(Entry::on_paper(what(payment), business))
        })
    }
}

pub(super) fn returned(arguments: &Back, files: &mut Files) -> Ran {
    arguments.target.record(false, files, |_, _| {
        Ok(Entry::plain(Happened::Returned {
            payment: arguments.payment,
            because: arguments.because.clone(),
        }))
    })
}
