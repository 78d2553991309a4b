//! From the records of a job to its invoices, credits and receipts: plain words and finished strings.

mod closing;
mod progress;
mod receipt;
mod rows;

pub use receipt::{receipt, refund};

use std::collections::BTreeMap;

use super::figures::parts::{SumPart, bar, share};
use super::offering;
use super::views::bill::{AmountRow, BillView, Head};
use super::views::quote::{FileFacts, Term};
use crate::input::business::Business;
use crate::office::account::Account;
use crate::office::record::{Bills, Credit, Figures, Invoice};
use crate::press::drawing::{Drawing, Rgb};
use crate::values::{Day, Money};

/// What a bill is made of.
#[derive(Clone, Copy, Debug)]
pub struct Billing<'a> {
    pub number: &'a str,
    pub day: Day,
    /// The job before this bill.
    pub account: &'a Account<'a>,
    pub business: &'a Business,
}

/// Everything an invoice says; none where nothing was signed.
pub fn invoice(of: Billing<'_>, invoice: &Invoice) -> Option<BillView> {
    let (_, quote) = of.account.quote()?;
    let stages = quote.payments.len();
    let heading = match &invoice.bills {
        Bills::Stage(stage) => format!(
            "Invoice {} of {stages}: {}",
            stage + 1,
            lower(&quote.payments.get(*stage)?.when)
        ),
        Bills::Progress(progress) => format!("Progress to {}", progress.to.0.long()),
        Bills::Final => "Final invoice".to_owned(),
    };
    let name = format!("{}-{}", of.number, invoice.invoice);
    let mut view = blank(of, "Invoice", &name, &heading)?;
    let head = &mut view.head;
    head.amount = invoice.figures.total.0.to_string();
    head.amount_sentence = format!("Amount due{}", including(&invoice.figures));
    head.pay_by = format!("Please pay by {}", invoice.due.0.long());
    head.has_bar = true;
    (view.rows, view.sums) = rows::rows(of, invoice)?;
    if let Bills::Progress(done) = &invoice.bills {
        view.progress = Some(progress::view(done));
    }
    "Agreed and changed".clone_into(&mut view.agreed_heading);
    view.agreed = agreed(of)?;
    view.paid = paid(of, invoice);
    let ways = &of.business.invoices.how_to_pay;
    view.how_to_pay = ways.iter().map(|line| spoken(line)).collect();
    view.how_to_pay.push(Term::new(
        "Please write",
        format!("{name} on your payment."),
    ));
    view.next = next(of, invoice);
    view.closing = invoice.closing.as_ref().map(closing::page);
    Some(view)
}

/// Everything a credit says.
pub fn credit(of: Billing<'_>, credit: &Credit) -> Option<BillView> {
    let invoice = format!("{}-{}", of.number, credit.invoice);
    let name = format!("{invoice} credit {}", credit.credit);
    let mut view = blank(of, "Credit", &name, &format!("Credit to invoice {invoice}"))?;
    let total = credit.figures.total.0;
    view.head.amount = total.to_string();
    view.head.amount_sentence = format!("Taken off what you owe{}", including(&credit.figures));
    view.head.pay_by = offering::named(std::slice::from_ref(&credit.because));
    let owed = of.account.owed();
    let left = owed - total;
    view.agreed = vec![
        row("Owed before", owed.plain(), false),
        row("This credit", signs(-total), false),
        row(
            if left < Money::ZERO {
                "To your credit"
            } else {
                "Owed now"
            },
            left.max(-left).to_string(),
            true,
        ),
    ];
    Some(view)
}

/// The bar of an invoice, by the name its template uses.
pub fn figures(of: Billing<'_>, invoice: &Invoice, accent: Rgb) -> BTreeMap<String, Drawing> {
    let whole = of.account.contract().unwrap_or_default().total.0;
    let this = invoice.figures.total.0;
    let before = of.account.billed().total.0;
    let left = (whole - before - this).max(Money::ZERO);
    let part = |name: &str, amount: Money| SumPart {
        name: name.to_owned(),
        amount: amount.to_string(),
        share: share(amount, whole),
    };
    let parts = [
        part("billed before", before),
        part("this invoice", this),
        part("left", left),
    ];
    BTreeMap::from([("parts".to_owned(), bar(&parts, accent))])
}

/// What the file says of itself.
pub(super) fn facts(of: Billing<'_>, word: &str, name: &str) -> Option<FileFacts> {
    let (_, quote) = of.account.quote()?;
    Some(FileFacts {
        title: format!("{word} {name}, {}", of.business.firm.name),
        subject: quote.title.clone(),
        language: "en-US".to_owned(),
        created: of.day.noon(),
    })
}

/// The head of a page about a job; what is asked or given is the caller's to say.
pub(super) fn head(of: Billing<'_>, word: &str, name: &str, heading: &str) -> Option<Head> {
    let (_, quote) = of.account.quote()?;
    let day = of.day.long();
    Some(Head {
        heading: heading.to_owned(),
        word: word.to_owned(),
        customer: offering::customer(&quote.customer, quote.address.as_deref()),
        number: format!("{name}, {day}"),
        running_head: format!("{word} {name}, {day}"),
        amount: String::new(),
        amount_sentence: String::new(),
        pay_by: String::new(),
        has_bar: false,
    })
}

fn blank(of: Billing<'_>, word: &str, name: &str, heading: &str) -> Option<BillView> {
    Some(BillView {
        file: facts(of, word, name)?,
        firm: offering::firm(of.business),
        head: head(of, word, name, heading)?,
        rows: Vec::new(),
        sums: Vec::new(),
        agreed_heading: "What it changes".to_owned(),
        agreed: Vec::new(),
        paid: Vec::new(),
        how_to_pay: Vec::new(),
        next: Vec::new(),
        progress: None,
        closing: None,
    })
}

/// `, including 6% sales tax of $344.76`, as far as the record says.
pub(super) fn including(figures: &Figures) -> String {
    let taxes: Vec<String> = figures
        .taxes
        .iter()
        .filter(|tax| !tax.amount.0.is_zero())
        .map(|tax| format!("{} of {}", tax.name, tax.amount.0))
        .collect();
    if taxes.is_empty() {
        String::new()
    } else {
        format!(", including {}", taxes.join(" and "))
    }
}

/// An amount in a table: nothing is a dash.
fn dash(money: Money) -> String {
    if money.is_zero() {
        "\u{2013}".to_owned()
    } else {
        money.plain().replace('-', "\u{2212}")
    }
}

pub(super) fn row(what: impl Into<String>, amount: String, is_total: bool) -> AmountRow {
    AmountRow {
        what: what.into(),
        amount,
        is_total,
    }
}

/// What was quoted, chosen and changed, with tax.
fn agreed(of: Billing<'_>) -> Option<Vec<AmountRow>> {
    let (_, quote) = of.account.quote()?;
    let (signed, accepted) = of.account.accepted()?;
    let as_quoted = quote
        .combinations
        .iter()
        .find(|one| one.choice == quote.as_quoted)?;
    let quoted = as_quoted.figures.total.0;
    let mut rows = vec![row(format!("Quote {}", of.number), quoted.plain(), false)];
    // Choices are not additive, so they stand in one line with what they make together.
    let agreed = accepted.contract.total.0;
    if !accepted.taken.is_empty() {
        let taken = accepted.taken.iter().map(|one| offering::short(one));
        let taken = taken.collect::<Vec<_>>().join(" + ");
        rows.push(row(taken, signs(agreed - quoted), false));
    }
    let signed = format!("Signed {}", signed.long());
    rows.push(row(signed, agreed.plain(), true));
    rows.extend(changes(of.account));
    let contract = of.account.contract()?;
    rows.push(row("Agreed today", contract.total.0.to_string(), true));
    Some(rows)
}

/// Every change that was signed, a row each.
pub(super) fn changes(account: &Account<'_>) -> impl Iterator<Item = AmountRow> {
    let signed = account.changes.iter().filter(|one| one.is_accepted());
    signed.map(|one| {
        let what = format!("Change {}: {}", one.change.change, one.change.title);
        row(what, signs(one.change.figures.total.0), false)
    })
}

/// `+ 1,314.40`.
pub(super) fn signs(amount: Money) -> String {
    if amount < Money::ZERO {
        format!("\u{2212}\u{a0}{}", (-amount).plain())
    } else {
        format!("+\u{a0}{}", amount.plain())
    }
}

/// Money in, this invoice, and what is left of what was agreed.
fn paid(of: Billing<'_>, invoice: &Invoice) -> Vec<AmountRow> {
    let kept = of.account.payments.iter().filter(|one| !one.returned);
    let payments = kept.map(|one| {
        let what = format!("{}, {}", one.day.long(), one.payment.how);
        row(what, one.payment.amount.0.plain(), false)
    });
    let mut rows: Vec<AmountRow> = payments.collect();
    rows.push(row("Paid so far", of.account.paid().plain(), true));
    rows.extend(still(of.account));
    rows.push(row("This invoice", invoice.figures.total.0.plain(), false));
    let contract = of.account.contract().unwrap_or_default();
    let left = contract.total.0 - of.account.billed().total.0 - invoice.figures.total.0;
    if !left.is_zero() {
        rows.push(row("Billed later", left.plain(), false));
    }
    rows.push(row("The agreed total", contract.total.0.to_string(), true));
    rows
}

/// What is billed and not paid, or paid and not billed; and what was forgiven.
fn still(account: &Account<'_>) -> Vec<AmountRow> {
    let (open, credited) = (account.owed(), account.credited());
    let mut rows = Vec::new();
    if Money::ZERO < open {
        rows.push(row("Billed and still open", open.plain(), false));
    } else if open < Money::ZERO {
        rows.push(row("Of it paid ahead", signs(open), false));
    }
    if !credited.is_zero() {
        rows.push(row("Taken off by a credit", credited.plain(), false));
    }
    rows
}

/// What the customer may expect after this one.
fn next(of: Billing<'_>, invoice: &Invoice) -> Vec<String> {
    let Some((_, quote)) = of.account.quote() else {
        return Vec::new();
    };
    let later = match &invoice.bills {
        Bills::Stage(stage) => quote.payments.get(stage + 1),
        Bills::Progress(_) => {
            return vec!["The next invoice says how far the work has come by then.".to_owned()];
        }
        Bills::Final => None,
    };
    vec![later.map_or_else(
        || "Nothing further: this is the last invoice of this job.".to_owned(),
        |stage| format!("The next payment falls due: {}.", lower(&stage.when)),
    )]
}

/// The first word small, as in the middle of a sentence.
fn lower(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// `Check to us` and the like: the first word is spoken loudly.
fn spoken(line: &str) -> Term {
    let (word, text) = line.split_once(' ').unwrap_or((line, ""));
    Term::new(word, text)
}
