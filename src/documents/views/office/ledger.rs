//! Jobs on record for the office: the overview, what is owed, one job's statement.

use std::collections::BTreeMap;

use super::columns::{Stand, set};
use crate::office::account::{Account, Answer};
use crate::office::billing::stages;
use crate::office::record::Bills;
use crate::values::{Day, Money};

/// A job as the overview shows it.
#[derive(Clone, Debug)]
pub struct Line {
    pub number: String,
    pub customer: String,
    pub state: &'static str,
    /// The next thing to do, in a few words.
    pub next: String,
    /// Days until the quote's last day; none once it is answered.
    pub days_left: Option<i64>,
    pub total: Money,
    pub billed: Money,
    pub paid: Money,
    pub owed: Money,
}

/// The line of one job as of a day; none where no quote went out.
pub fn line(number: &str, account: &Account<'_>, today: Day) -> Option<Line> {
    let (_, quote) = account.quote()?;
    let as_quoted = quote
        .combinations
        .iter()
        .find(|one| one.choice == quote.as_quoted)?;
    let days_left = quote.good_until.0.days_since(today);
    let waits = matches!(account.answer, Answer::None | Answer::Postponed { .. });
    let contract = account.contract();
    let (state, next) = state(account, today);
    Some(Line {
        number: number.to_owned(),
        customer: quote.customer.clone(),
        state,
        next,
        days_left: waits.then_some(days_left),
        total: contract.map_or(as_quoted.figures.total.0, |contract| contract.total.0),
        billed: account.billed().total.0 - account.credited(),
        paid: account.paid(),
        owed: account.owed(),
    })
}

/// Where a job stands, and what to do next.
pub fn state(account: &Account<'_>, today: Day) -> (&'static str, String) {
    let Some((_, quote)) = account.quote() else {
        return ("nothing", String::new());
    };
    match account.answer {
        Answer::None if quote.good_until.0 < today => {
            ("expired", "send a revision, or withdraw it".to_owned())
        }
        Answer::None => ("quoted", "ask the customer".to_owned()),
        Answer::Postponed { until: Some(until) } => ("postponed", format!("ask again on {until}")),
        Answer::Postponed { until: None } => ("postponed", "ask the customer".to_owned()),
        Answer::Declined { because } => ("declined", because.to_owned()),
        Answer::Withdrawn { because } => ("withdrawn", because.to_owned()),
        Answer::Cancelled { refund_by } => {
            // Whatever came in goes back, billed or not.
            let left = account.paid();
            match refund_by {
                Some(by) if Money::ZERO < left => ("cancelled", format!("pay back {left} by {by}")),
                _ => ("cancelled", String::new()),
            }
        }
        Answer::Accepted { .. } => under_contract(account, today),
    }
}

fn under_contract(account: &Account<'_>, today: Day) -> (&'static str, String) {
    let contract = account.contract().unwrap_or_default();
    let left = contract.less(&account.billed());
    let owed = account.owed();
    let late = account
        .invoices
        .iter()
        .find(|one| Money::ZERO < one.open() && one.invoice.due.0 < today);
    if let Some(late) = late {
        return (
            "signed",
            format!(
                "invoice {} was due {}: {} open",
                late.invoice.invoice,
                late.invoice.due.0,
                late.open()
            ),
        );
    }
    if let Some(waiting) = account.changes.iter().find(|one| one.waits()) {
        return (
            "signed",
            format!("change {} waits for a signature", waiting.change.change),
        );
    }
    if Money::ZERO < owed {
        return ("signed", format!("{owed} is billed and open"));
    }
    if left.is_nothing() {
        return if owed < Money::ZERO {
            ("paid", format!("{} to the customer's credit", -owed))
        } else {
            ("paid", String::new())
        };
    }
    ("signed", next_bill(account).unwrap_or_default())
}

/// The first payment of the schedule that is not billed.
fn next_bill(account: &Account<'_>) -> Option<String> {
    let (_, quote) = account.quote()?;
    let (_, accepted) = account.accepted()?;
    let parts = stages(&accepted.contract, &quote.payments);
    let billed = |bills: Bills| {
        let mut kept = account.invoices.iter().filter(|one| !one.voided);
        kept.any(|one| one.invoice.bills == bills)
    };
    let mut kept = account.invoices.iter().filter(|one| !one.voided);
    if kept.any(|one| matches!(one.invoice.bills, Bills::Progress(_))) {
        return Some("bill more with --progress FILE, or the rest with --final".to_owned());
    }
    let next = (0..quote.payments.len()).find(|stage| !billed(Bills::Stage(*stage)));
    Some(match next {
        Some(stage) => format!(
            "bill {}: {}",
            parts[stage].total.0, quote.payments[stage].when
        ),
        None => "bill the rest with --final".to_owned(),
    })
}

/// Every job in a line, and what they make together.
pub fn overview(lines: &[Line]) -> String {
    if lines.is_empty() {
        return "No jobs on record. `flatwork quote FILE --issue` makes the first.\n".to_owned();
    }
    let heads = [
        "number", "customer", "state", "days", "total", "billed", "paid", "owed", "next",
    ];
    let mut rows = vec![heads.map(str::to_owned).to_vec()];
    rows.extend(lines.iter().map(|line| {
        vec![
            line.number.clone(),
            line.customer.clone(),
            line.state.to_owned(),
            line.days_left
                .map(|days| days.to_string())
                .unwrap_or_default(),
            line.total.plain(),
            line.billed.plain(),
            line.paid.plain(),
            line.owed.plain(),
            line.next.clone(),
        ]
    }));
    let sum = |of: fn(&Line) -> Money| lines.iter().map(of).sum::<Money>().plain();
    rows.push(vec![
        format!(
            "{} {}",
            lines.len(),
            if lines.len() == 1 { "job" } else { "jobs" }
        ),
        String::new(),
        String::new(),
        String::new(),
        sum(|line| line.total),
        sum(|line| line.billed),
        sum(|line| line.paid),
        sum(|line| line.owed),
        String::new(),
    ]);
    let stands = [
        Stand::Left,
        Stand::Left,
        Stand::Left,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Left,
    ];
    set(&stands, &rows).join("\n") + "\n"
}

/// Days after the due day at which what is owed grows a class older.
const AGES: [i64; 3] = [30, 60, 90];

/// An invoice that is not paid in full.
#[derive(Clone, Debug)]
pub struct Due {
    pub invoice: String,
    pub customer: String,
    pub billed: Day,
    pub due: Day,
    /// Days since it was due; below zero before.
    pub days_over: i64,
    pub open: Money,
}

/// Every invoice that is not paid in full, by number, and what was refunded in vain.
pub fn open(jobs: &BTreeMap<String, Account<'_>>, today: Day) -> Vec<Due> {
    let of_job = |(number, account): (&String, &Account<'_>)| -> Vec<Due> {
        let Some((_, quote)) = account.quote() else {
            return Vec::new();
        };
        let refund = account.refunds.last().map(|(day, _)| Due {
            invoice: format!("{number} refund"),
            customer: quote.customer.clone(),
            billed: *day,
            due: *day,
            days_over: today.days_since(*day),
            open: account.refund_owed,
        });
        let refund = refund.filter(|one| Money::ZERO < one.open);
        let open = account.invoices.iter();
        open.filter(|billed| Money::ZERO < billed.open())
            .map(|billed| Due {
                invoice: format!("{number}-{}", billed.invoice.invoice),
                customer: quote.customer.clone(),
                billed: billed.day,
                due: billed.invoice.due.0,
                days_over: today.days_since(billed.invoice.due.0),
                open: billed.open(),
            })
            .chain(refund)
            .collect()
    };
    jobs.iter().flat_map(of_job).collect()
}

/// What is owed, by how long it has been due.
pub fn owed(open: &[Due]) -> String {
    let mut rows = vec![
        [
            "invoice", "customer", "due", "not due", "1 to 30", "31 to 60", "61 to 90", "older",
        ]
        .map(str::to_owned)
        .to_vec(),
    ];
    let mut sums = [Money::ZERO; 5];
    for one in open {
        let class = age(one.days_over);
        sums[class] = sums[class] + one.open;
        let mut row = vec![
            one.invoice.clone(),
            one.customer.clone(),
            one.due.to_string(),
        ];
        row.extend((0..5).map(|i| {
            if i == class {
                one.open.plain()
            } else {
                String::new()
            }
        }));
        rows.push(row);
    }
    if rows.len() == 1 {
        return "Nothing is owed.\n".to_owned();
    }
    let whole: Money = sums.iter().copied().sum();
    let mut last = vec!["together".to_owned(), whole.plain(), String::new()];
    last.extend(sums.map(Money::plain));
    rows.push(last);
    let stands = [
        Stand::Left,
        Stand::Left,
        Stand::Left,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
    ];
    set(&stands, &rows).join("\n") + "\n"
}

/// 0 is not yet due.
fn age(days_over: i64) -> usize {
    if days_over <= 0 {
        return 0;
    }
    1 + AGES.iter().filter(|age| **age < days_over).count()
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
    let mut rows = Vec::new();
    if let Some(contract) = account.contract() {
        rows.push(vec![
            String::new(),
            "agreed".into(),
            contract.total.0.plain(),
            String::new(),
        ]);
    }
    for billed in &account.invoices {
        let mut what = format!("invoice {number}-{}", billed.invoice.invoice);
        if billed.voided {
            what.push_str(", void");
        }
        rows.push(vec![
            billed.day.to_string(),
            what,
            billed.invoice.figures.total.0.plain(),
            if billed.voided || billed.open() <= Money::ZERO {
                String::new()
            } else {
                format!("{} open, due {}", billed.open(), billed.invoice.due.0)
            },
        ]);
        for credit in &billed.credits {
            rows.push(vec![
                String::new(),
                format!("credit {}: {}", credit.credit, credit.because),
                (-credit.figures.total.0).plain(),
                String::new(),
            ]);
        }
    }
    for received in &account.payments {
        rows.push(vec![
            received.day.to_string(),
            format!(
                "payment {}, {}{}",
                received.payment.payment,
                received.payment.how,
                if received.returned { ", came back" } else { "" }
            ),
            received.payment.amount.0.plain(),
            String::new(),
        ]);
    }
    for (day, refund) in &account.refunds {
        rows.push(vec![
            day.to_string(),
            format!("refund, {}", refund.how),
            (-refund.amount.0).plain(),
            String::new(),
        ]);
    }
    rows.push(vec![
        String::new(),
        "owed".into(),
        account.owed().plain(),
        String::new(),
    ]);
    out.push(String::new());
    out.extend(set(
        &[Stand::Left, Stand::Left, Stand::Right, Stand::Left],
        &rows,
    ));
    out.join("\n") + "\n"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bill_grows_older_the_day_after_each_limit() {
        let ages: Vec<usize> = [-5, 0, 1, 30, 31, 60, 61, 90, 91].map(age).to_vec();
        assert_eq!(ages, [0, 0, 1, 1, 2, 2, 3, 3, 4]);
    }
}
