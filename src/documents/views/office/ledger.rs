//! Jobs on record for the office: the overview, what is owed, how many were won, one job's statement.

use super::counted;
use crate::documents::column::{Cell, Column, Columns, Reader};
use crate::documents::table::{Align, table};
use crate::office::account::Account;
use crate::office::ageing::OpenInvoice;
use crate::office::late::Late;
use crate::office::standing::{Next, Standing};
use crate::office::win_rate::WinRate;
use crate::values::{Day, Money};

const TERMINAL: &[Reader] = &[Reader::Terminal];
const FILES: &[Reader] = &[Reader::Csv, Reader::Json];

/// Every job in a row.
pub fn jobs<'a>() -> Columns<'a, Standing<'a>> {
    type Of<'a> = Column<'a, Standing<'a>>;
    Columns(vec![
        Of::left("number", |job| job.number).foot(|jobs| counted(jobs.len(), "job", "jobs")),
        Of::left("customer", |job| job.customer),
        Of::left("state", |job| job.state.name()),
        Of::left("next", |job| next(job.next)).last(),
        Of::right("days_left", |job| job.days_left).head("days"),
        Of::summed("total", |job| job.total),
        Of::summed("billed", |job| job.billed),
        Of::summed("paid", |job| job.paid),
        Of::summed("owed", |job| job.owed),
    ])
}

/// The next thing to do, in a few words.
fn next(next: Next<'_>) -> String {
    match next {
        Next::Nothing => String::new(),
        Next::Ask => "ask the customer".to_owned(),
        Next::AskOn(day) => format!("ask again on {day}"),
        Next::Revise => "send a revision, or withdraw it".to_owned(),
        Next::Because(because) => because.to_owned(),
        Next::PayBack { left, by } => format!("pay back {left} by {by}"),
        Next::Remind { invoice, due, open } => {
            format!("invoice {invoice} was due {due}: {open} open")
        }
        Next::AwaitSignature(change) => format!("change {change} waits for a signature"),
        Next::AwaitPayment(owed) => format!("{owed} is billed and open"),
        Next::Credit(credit) => format!("{credit} to the customer's credit"),
        Next::BillStage { total, when } => format!("bill {total}: {when}"),
        Next::BillProgress => "bill more with --progress FILE, or the rest with --final".to_owned(),
        Next::BillRest => "bill the rest with --final".to_owned(),
    }
}

/// Every job in a line, and what they make together.
pub fn overview(found: &[Standing<'_>]) -> String {
    if found.is_empty() {
        return "No jobs on record. `flatwork quote FILE --issue` makes the first.\n".to_owned();
    }
    jobs().lines(found).join("\n") + "\n"
}

/// Every open invoice in a row; in the terminal by how long it has been due.
pub fn invoices<'a>() -> Columns<'a, OpenInvoice> {
    type Of<'a> = Column<'a, OpenInvoice>;
    let ages = ["not due", "1 to 30", "31 to 60", "61 to 90", "older"];
    let ages = ages.iter().enumerate().map(|(age, head)| {
        let amount = move |one: &OpenInvoice| (one.age() == age).then_some(one.open);
        Of::summed(*head, amount).only(TERMINAL)
    });
    let all = |open: &[OpenInvoice]| open.iter().map(|one| one.open).sum::<Money>();
    let mut columns = vec![
        Of::left("invoice", |one| one.invoice.clone()).foot(|_| "together"),
        Of::left("customer", |one| one.customer.clone()).foot(all),
        Of::left("billed", |one| one.billed).only(FILES),
        Of::left("due", |one| one.due),
        Of::right("days_over", |one| one.days_over).only(FILES),
        Of::right("open", |one| one.open).only(FILES),
    ];
    columns.extend(ages);
    Columns(columns)
}

/// What is owed, by how long it has been due.
pub fn owed(open: &[OpenInvoice]) -> String {
    if open.is_empty() {
        return "Nothing is owed.\n".to_owned();
    }
    invoices().lines(open).join("\n") + "\n"
}

/// How many quotes became jobs, by kind of work.
pub fn win_rates<'a>() -> Columns<'a, (String, WinRate)> {
    type Of<'a> = Column<'a, (String, WinRate)>;
    Columns(vec![
        Of::left("kind", |(kind, _)| kind.clone()),
        Of::right("quoted", |(_, tally)| tally.quoted()),
        Of::right("won", |(_, tally)| tally.won),
        Of::right("lost", |(_, tally)| tally.lost),
        Of::right("open", |(_, tally)| tally.open),
        Of::right("withdrawn", |(_, tally)| tally.withdrawn),
        Of::right("percent", |(_, tally)| {
            let percent = tally.percent();
            percent.map(|percent| Cell::percent(percent, 1, format!("{percent}%")))
        })
        .head("won of decided"),
    ])
}

/// Everything that happened to one job.
pub fn statement(number: &str, account: &Account<'_>) -> String {
    let Some((day, quote)) = account.quote() else {
        return String::new();
    };
    let mut out = vec![
        format!("{number}, {} for {}", quote.title, quote.customer),
        format!(
            "quoted {day}, revision {}, good until {}",
            quote.revision, quote.good_until.0
        ),
    ];
    if let Some((signed, accepted)) = account.accepted() {
        out.push(format!(
            "accepted {signed} by {}, {}",
            accepted.by, accepted.how
        ));
    }
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut row = |day: Option<Day>, what: String, amount: Money, words: String| {
        let day = day.map(|day| day.to_string()).unwrap_or_default();
        rows.push(vec![day, what, amount.plain(), words]);
    };
    let none = String::new;
    if let Some(contract) = account.contract() {
        row(None, "agreed".into(), contract.total.0, none());
    }
    for billed in &account.invoices {
        let void = if billed.voided { ", void" } else { "" };
        let open = if billed.voided || billed.open() <= Money::ZERO {
            none()
        } else {
            format!("{} open, due {}", billed.open(), billed.invoice.due.0)
        };
        let what = format!("invoice {number}-{}{void}", billed.invoice.invoice);
        row(Some(billed.day), what, billed.invoice.figures.total.0, open);
        for credit in &billed.credits {
            let what = format!("credit {}: {}", credit.credit, credit.because);
            row(None, what, -credit.figures.total.0, none());
        }
    }
    for received in &account.payments {
        let payment = received.payment;
        let back = if received.returned { ", came back" } else { "" };
        let what = format!("payment {}, {}{back}", payment.payment, payment.how);
        row(Some(received.day), what, payment.amount.0, none());
    }
    for (day, refund) in &account.refunds {
        let what = format!("refund, {}", refund.how);
        row(Some(*day), what, -refund.amount.0, none());
    }
    row(None, "owed".into(), account.owed(), none());
    out.push(String::new());
    let aligns = [Align::Left, Align::Left, Align::Right, Align::Left];
    out.extend(table(&aligns, &rows));
    out.join("\n") + "\n"
}

/// What late charges come to with their workings; nothing where there are none.
pub fn late(charges: &[(String, Late)], today: Day) -> String {
    if charges.is_empty() {
        return String::new();
    }
    let row = |(invoice, late): &(String, Late)| {
        vec![invoice.clone(), late.amount.plain(), late.working.clone()]
    };
    let mut rows: Vec<Vec<String>> = charges.iter().map(row).collect();
    if 1 < charges.len() {
        let sum: Money = charges.iter().map(|(_, late)| late.amount).sum();
        rows.push(vec!["together".into(), sum.plain()]);
    }
    let rows = table(&[Align::Left, Align::Right, Align::Left], &rows).join("\n");
    format!(
        "\nLate charge to {today}, on what is open; it is not billed, and your state's law says what may be asked\n{rows}\n"
    )
}
