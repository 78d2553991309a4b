//! What may happen next to a job, and what to do instead where it may not.

use super::account::{Account, Answer, ChangeAnswer};
use super::record::{Bills, Credit, Happened, Payment};
use crate::values::{Day, Money};

/// Why something cannot be recorded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    pub code: &'static str,
    pub message: String,
    pub help: String,
}

fn refuse(code: &'static str, message: impl Into<String>, help: impl Into<String>) -> Refusal {
    Refusal {
        code,
        message: message.into(),
        help: help.into(),
    }
}

/// Whether `what` may be recorded of `number` on `day`; `late` takes a quote past its day.
///
/// # Errors
/// When it may not, with the reason and the command that helps.
pub fn may(
    account: &Account<'_>,
    number: &str,
    day: Day,
    what: &Happened,
    late: bool,
) -> Result<(), Refusal> {
    match what {
        Happened::Quote(_) => unanswered(account, number, "a revision"),
        Happened::Accepted(_) => {
            unanswered(account, number, "a yes")?;
            let good_until = account.quote().map(|(_, quote)| quote.good_until.0);
            match good_until {
                Some(until) if until < day && !late => Err(refuse(
                    "quote-expired",
                    format!("{number} was good until {until}"),
                    "send a revision at today's prices, or add `--late` to take it all the same",
                )),
                _ => Ok(()),
            }
        }
        Happened::Declined {
            change: Some(change),
            ..
        } => {
            in_force(account, number)?;
            waiting(account, number, *change)
        }
        Happened::Declined { .. } | Happened::Withdrawn { .. } | Happened::Postponed { .. } => {
            unanswered(account, number, "this")
        }
        Happened::Cancelled { .. }
        | Happened::Change(_)
        | Happened::Invoice(_)
        | Happened::ChangeAccepted { .. } => signed(account, number, what),
        Happened::Voided { invoice, .. } => {
            let billed = billed(account, number, *invoice)?;
            if billed.credits.is_empty() && billed.paid <= Money::ZERO {
                Ok(())
            } else {
                Err(refuse(
                    "invoice-in-use",
                    format!("invoice {number}-{invoice} has money or a credit against it"),
                    format!(
                        "write a credit against it: `flatwork credit {number} {invoice} AMOUNT --because ...`"
                    ),
                ))
            }
        }
        Happened::Credit(credit) => credited(account, number, credit),
        Happened::Paid(payment) => paid(account, number, payment),
        Happened::Returned { payment, .. } => {
            let found = account
                .payments
                .iter()
                .find(|one| one.payment.payment == *payment);
            match found {
                Some(found) if !found.returned => Ok(()),
                Some(_) => Err(refuse(
                    "returned-twice",
                    format!("payment {payment} of {number} came back already"),
                    "nothing is left to take back",
                )),
                None => Err(refuse(
                    "no-such-payment",
                    format!("{number} has no payment {payment}"),
                    format!("`flatwork statement {number}` lists them"),
                )),
            }
        }
        Happened::Refunded(payment) => {
            let credit = -account.owed();
            if payment.amount.0 <= credit {
                Ok(())
            } else {
                Err(refuse(
                    "nothing-to-refund",
                    format!(
                        "{number} has {} to its credit, not {}",
                        credit.max(Money::ZERO),
                        payment.amount.0
                    ),
                    "write a credit first where an invoice was too high",
                ))
            }
        }
    }
}

/// A quote that waits for its answer.
fn unanswered(account: &Account<'_>, number: &str, what: &str) -> Result<(), Refusal> {
    match account.answer {
        Answer::None | Answer::Postponed { .. } => Ok(()),
        Answer::Accepted { day, .. } => Err(refuse(
            "already-accepted",
            format!("{number} was accepted on {day}, so {what} comes too late"),
            format!(
                "`flatwork change {number} FILE` adds or takes off work; `flatwork cancel {number}` ends it"
            ),
        )),
        Answer::Declined { .. } | Answer::Withdrawn { .. } | Answer::Cancelled { .. }
            if what == "a revision" =>
        {
            Ok(())
        }
        Answer::Declined { .. } | Answer::Withdrawn { .. } | Answer::Cancelled { .. } => {
            Err(refuse(
                "already-closed",
                format!("{number} is {}", closed(account)),
                format!("a revision opens it again: `flatwork quote FILE --revise {number}`"),
            ))
        }
    }
}

fn closed(account: &Account<'_>) -> &'static str {
    match account.answer {
        Answer::Declined { .. } => "declined",
        Answer::Withdrawn { .. } => "withdrawn",
        Answer::Cancelled { .. } => "cancelled",
        Answer::None | Answer::Postponed { .. } | Answer::Accepted { .. } => "open",
    }
}

/// A job under contract.
fn in_force(account: &Account<'_>, number: &str) -> Result<(), Refusal> {
    if account.accepted().is_none() {
        return Err(refuse(
            "not-accepted",
            format!("{number} has not been accepted"),
            format!("when it is signed: `flatwork accept {number} --by NAME`"),
        ));
    }
    Ok(())
}

/// A change order that nobody has answered yet.
fn waiting(account: &Account<'_>, number: &str, change: u32) -> Result<(), Refusal> {
    let mut changes = account.changes.iter();
    let found = changes.find(|one| one.change.change == change);
    match found.map(|one| one.answer) {
        Some(ChangeAnswer::None) => Ok(()),
        Some(ChangeAnswer::Accepted(_)) => Err(refuse(
            "change-accepted-already",
            format!("change {change} of {number} was accepted already"),
            "a further change is a change order of its own",
        )),
        Some(ChangeAnswer::Declined) => Err(refuse(
            "change-declined-already",
            format!("change {change} of {number} was declined"),
            format!("write it once more: `flatwork change {number} FILE`"),
        )),
        None => Err(refuse(
            "no-such-change",
            format!("{number} has no change {change}"),
            format!("write it first: `flatwork change {number} FILE`"),
        )),
    }
}

/// What only a job under contract can have.
fn signed(account: &Account<'_>, number: &str, what: &Happened) -> Result<(), Refusal> {
    in_force(account, number)?;
    match what {
        Happened::Invoice(invoice) => {
            let mut kept = account.invoices.iter().filter(|one| !one.voided);
            // What is left after a final invoice, such as a late change, is a final invoice too.
            let again = kept.find(|one| match invoice.bills {
                Bills::Final => false,
                Bills::Progress(_) => one.invoice.bills == Bills::Final,
                Bills::Stage(_) if matches!(one.invoice.bills, Bills::Progress(_)) => true,
                Bills::Stage(_) => {
                    one.invoice.bills == invoice.bills || one.invoice.bills == Bills::Final
                }
            });
            match again {
                None => Ok(()),
                Some(again) => Err(refuse(
                    "billed-already",
                    format!(
                        "invoice {number}-{} of {} bills this already",
                        again.invoice.invoice, again.day
                    ),
                    format!(
                        "`flatwork void {number} {}` takes it back first",
                        again.invoice.invoice
                    ),
                )),
            }
        }
        Happened::ChangeAccepted { change, .. } => waiting(account, number, *change),
        _ => Ok(()),
    }
}

fn billed<'a, 'b>(
    account: &'a Account<'b>,
    number: &str,
    invoice: u32,
) -> Result<&'a super::account::Billed<'b>, Refusal> {
    let found = account
        .invoices
        .iter()
        .find(|one| one.invoice.invoice == invoice);
    let listed = format!("`flatwork statement {number}` lists its invoices");
    match found {
        None => Err(refuse(
            "no-such-invoice",
            format!("there is no invoice {number}-{invoice}"),
            listed,
        )),
        Some(found) if found.voided => Err(refuse(
            "invoice-void",
            format!("invoice {number}-{invoice} is void"),
            listed,
        )),
        Some(found) => Ok(found),
    }
}

fn credited(account: &Account<'_>, number: &str, credit: &Credit) -> Result<(), Refusal> {
    let billed = billed(account, number, credit.invoice)?;
    let asked = billed.asked();
    let total = credit.figures.total.0;
    if total <= asked {
        return Ok(());
    }
    Err(refuse(
        "credit-too-high",
        format!(
            "invoice {number}-{} asks {asked}, less than a credit of {total}",
            credit.invoice
        ),
        "a credit takes off at most what the invoice asks",
    ))
}

fn paid(account: &Account<'_>, number: &str, payment: &Payment) -> Result<(), Refusal> {
    if account.quotes.is_empty() {
        return Err(refuse(
            "no-such-quote",
            format!("there is no quote {number}"),
            "`flatwork jobs` lists the numbers",
        ));
    }
    match payment.invoice {
        Some(invoice) => billed(account, number, invoice).map(|_| ()),
        None => Ok(()),
    }
}
