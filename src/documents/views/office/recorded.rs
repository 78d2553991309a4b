//! What the office reads when something is put on record: what it comes to, what is next.

use std::fmt::Write as _;

use super::change;
use crate::input::business::Business;
use crate::office::billing::{broken_cap, stages};
use crate::office::job::Job;
use crate::office::record::{Accepted, Change, Figures, Happened, Invoice, Payment};
use crate::values::Money;

/// `happened` is not in the account yet; `business` is there where a page is made by it.
pub fn text(job: Job<'_>, happened: &Happened, business: Option<&Business>) -> String {
    let number = job.number;
    match happened {
        // It is told with its price.
        Happened::Quote(_) => String::new(),
        Happened::Accepted(one) => accepted(job, one),
        Happened::Cancelled { because, refund_by } => {
            let mut said = format!("{number} cancelled: {because}\n");
            if let Some(day) = refund_by {
                let (paid, day) = (job.account.paid(), day.0.long());
                let _ = writeln!(
                    said,
                    "in time     pay back {paid} by {day}; check your state's law"
                );
            }
            said
        }
        Happened::Declined { because, change } => {
            let of = change.map_or_else(String::new, |change| format!("change {change} "));
            format!("{number} {of}declined: {because}\n")
        }
        Happened::Withdrawn { because } => format!("{number} withdrawn: {because}\n"),
        Happened::Postponed { because, .. } => format!("{number} postponed: {because}\n"),
        Happened::Change(one) => changed(job, one),
        Happened::ChangeAccepted { change, by, .. } => {
            let mut said = format!("change {change} of {number} accepted by {by}\n");
            let found = job.account.change(*change);
            if let (Some(found), Some(contract)) = (found, job.account.contract()) {
                let sum = contract.plus(&found.change.figures);
                let _ = writeln!(said, "agreed now  {}", told(&sum));
            }
            said
        }
        Happened::Invoice(one) => invoice(number, one, business),
        Happened::Voided { invoice, because } => {
            format!("void        {number}-{invoice}: {because}\n")
        }
        Happened::Credit(credit) => format!(
            "credit      {} off invoice {number}-{}: {}\n",
            credit.figures.total.0, credit.invoice, credit.because
        ),
        Happened::Paid(payment) => paid(job, payment),
        Happened::Returned { payment, because } => {
            format!("returned    payment {payment} of {number}: {because}\n")
        }
        Happened::Refunded(refund) => format!("refunded    {} of {number}\n", refund.amount.0),
    }
}

fn accepted(job: Job<'_>, accepted: &Accepted) -> String {
    let (number, by) = (job.number, &accepted.by);
    let mut said = vec![format!(
        "{number} accepted by {by}: {}",
        told(&accepted.contract)
    )];
    let taken = accepted.taken.iter();
    said.extend(taken.map(|taken| format!("with        {taken}")));
    let Some((_, quote)) = job.account.quote() else {
        return said.join("\n") + "\n";
    };
    let first = stages(&accepted.contract, &quote.payments);
    if let (Some(stage), Some(part)) = (quote.payments.first(), first.first()) {
        let first = part.total.0;
        said.push(format!(
            "next        bill `{}`, {first}: `flatwork invoice {number}`",
            stage.when
        ));
        if let Some(cap) = broken_cap(first, accepted.contract.total.0, quote) {
            said.push(format!(
                "look at     your cap on a deposit is {cap} of this contract; check your state's law"
            ));
        }
    }
    if let Some(until) = accepted.cancel_until {
        let last = until.0.long();
        said.push(format!(
            "may cancel  until midnight of {last}; check your state's law"
        ));
        said.push(format!(
            "write       {} and {last} on both forms before you hand them over",
            job.day.long()
        ));
        if quote.pours.iter().any(|pour| *pour <= until) {
            said.push("look at     a pour falls into that time".to_owned());
        }
    }
    said.join("\n") + "\n"
}

fn changed(job: Job<'_>, change: &Change) -> String {
    let (number, account) = (job.number, job.account);
    let floor = account.quote().map(|(_, quote)| quote.margin_floor.0);
    let after = account.contract().unwrap_or_default().plus(&change.figures);
    format!(
        "{}agreed      {} with this change\nnext        when it is signed: `flatwork accept {number} --change {}`\n",
        change::text(number, change, floor.unwrap_or_default()),
        told(&after),
        change.change,
    )
}

/// With what the owner does not want to forget after the last pour.
fn invoice(number: &str, invoice: &Invoice, business: Option<&Business>) -> String {
    let mut said = format!(
        "invoice     {number}-{}, {}, due {}\n",
        invoice.invoice,
        invoice.figures.total.0,
        invoice.due.0.long()
    );
    if let (Some(closing), Some(business)) = (&invoice.closing, business) {
        for (name, days) in &business.invoices.notices {
            let by = closing.poured.0.plus(i64::from(days.0)).long();
            let _ = writeln!(
                said,
                "not later   {name}: {by}, {} days after the pour; check your state's law",
                days.0
            );
        }
    }
    said
}

fn paid(job: Job<'_>, payment: &Payment) -> String {
    let amount = payment.amount.0;
    let left = job.account.owed() - amount;
    let left = if left < Money::ZERO {
        format!("{} more than is billed so far", -left)
    } else {
        format!("{left} of what is billed is still open")
    };
    format!("paid        {amount} to {}; {left}\n", job.number)
}

/// `$12,900.20, of it $730.20 sales tax`.
fn told(figures: &Figures) -> String {
    let total = figures.total.0;
    let taxes = figures.taxes.iter();
    let taxes: Vec<String> = taxes
        .map(|tax| format!("{} {}", tax.amount.0, tax.name))
        .collect();
    if taxes.is_empty() {
        total.to_string()
    } else {
        format!("{total}, of it {}", taxes.join(" and "))
    }
}
