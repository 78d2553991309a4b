//! A progress invoice: work to date less what is withheld of it, less all that was billed.

use rust_decimal::Decimal;

use super::account::Account;
use super::job::Job;
use super::record::{Bills, Figures, InvoiceLine, Progress, ProgressLine, Withheld};
use super::text::{self, Cents};
use crate::input::phrases::Share;
use crate::input::progress::{Done, LineWritten, ProgressWritten};
use crate::reading::{Problem, Problems, Read};
use crate::values::{Money, rounding};

/// The progress invoice that counts: the last that is not void.
pub fn last<'a>(account: &Account<'a>) -> Option<&'a Progress> {
    let mut latest = account.standing().rev();
    latest.find_map(|one| match &one.invoice.bills {
        Bills::Progress(progress) => Some(&**progress),
        Bills::Stage(_) | Bills::Final => None,
    })
}

/// Holds a schedule against the contract; answers where the job stands.
pub fn progress(
    written: &ProgressWritten,
    job: Job<'_>,
    problems: &mut Problems,
) -> Read<Progress> {
    let faults = problems.len();
    let price = job.contract(problems)?.price.0;
    let before = last(job.account);
    let lines: Vec<ProgressLine> = written.lines.iter().map(|one| line(one, before)).collect();
    for (one, line) in written.lines.iter().zip(&lines) {
        over_value(one, line, problems);
    }
    missing(written, before, problems);
    let values: Money = lines.iter().map(|one| one.value.0).sum();
    if values != price {
        let message =
            format!("the values make {values}, and {price} before tax is agreed, changes included");
        problems.push(
            Problem::new("values-not-contract", message)
                .at(written.place)
                .help(format!(
                    "the lines are {} away from it; work beyond the contract needs a change order first",
                    price - values
                )),
        );
    }
    let (retainage, retained) = retained(written.retainage.value, &lines);
    let released = written.released.value;
    if retained < released {
        let message = format!("{released} of retainage is released, and {retained} was withheld");
        problems.push(
            Problem::new("released-too-much", message)
                .at(written.released.place)
                .help("`released` is all that was paid out to date, at most what `retainage` comes to"),
        );
    }
    let held: Money = written.held_back.iter().map(|one| one.sum).sum();
    let others = written.held_back.iter();
    let others = others.map(|one| InvoiceLine::new(&one.says, one.sum));
    let work: Money = lines.iter().map(ProgressLine::to_date).sum();
    let earned = work - retained + released - held;
    if price < earned {
        let message = format!("this would bill {earned} to date, and {price} before tax is agreed");
        problems.push(
            Problem::new("over-contract", message)
                .at(written.place)
                .help("bill what a line takes off with the work it belongs to, or write a change order"),
        );
    }
    let earlier = |of: &dyn Fn(&Progress) -> Cents| before.map(of).unwrap_or_default();
    problems.none_since(faults)?;
    Ok(Progress {
        to: text::Day(written.to.unwrap_or(job.day)),
        lines,
        retainage,
        retained: Withheld {
            before: earlier(&|one| one.retained.to_date),
            to_date: Cents(retained),
        },
        released: Withheld {
            before: earlier(&|one| one.released.to_date),
            to_date: Cents(released),
        },
        held_back: others.collect(),
        held_before: Cents(before.map_or(Money::ZERO, held_back)),
        earned: Cents(earned),
    })
}

/// Everything that is held back beside the retainage.
pub fn held_back(progress: &Progress) -> Money {
    progress.held_back.iter().map(|one| one.price.0).sum()
}

/// What the record says a progress invoice is made of.
pub fn lines(done: &Progress, account: &Account<'_>) -> Vec<InvoiceLine> {
    let mut lines = vec![InvoiceLine::new("Earned to date", done.earned.0)];
    let billed = account.billed().price.0;
    if !billed.is_zero() {
        lines.push(InvoiceLine::new("Billed before", -billed));
    }
    lines
}

/// What this bill asks: the earned part of price and of each tax, less what was billed of it.
pub fn asked(progress: &Progress, account: &Account<'_>) -> Figures {
    let contract = account.contract().unwrap_or_default();
    let (earned, price) = (progress.earned.0, contract.price.0);
    let part = |tax: Money| {
        if price.is_zero() {
            return Money::ZERO;
        }
        rounding::to_cents(tax.dollars() * earned.dollars() / price.dollars())
    };
    let taxes = contract
        .taxes
        .iter()
        .map(|tax| (tax.name.clone(), part(tax.amount.0)));
    Figures::of(earned, taxes.collect()).less(&account.billed())
}

fn line(written: &LineWritten, before: Option<&Progress>) -> ProgressLine {
    let value = written.value.0;
    let done = match written.done {
        Done::Less(amount) | Done::Part(Share::Amount(amount)) => amount,
        Done::Part(Share::Rest) => value,
        Done::Part(part @ (Share::Percent(_) | Share::Fraction { .. })) => {
            rounding::to_cents(value.dollars() * part.of_one().unwrap_or(Decimal::ZERO))
        }
    };
    let earlier = before.and_then(|before| {
        let mut lines = before.lines.iter();
        lines.find(|line| line.says == written.says.value)
    });
    ProgressLine {
        says: written.says.value.clone(),
        value: Cents(value),
        before: Cents(earlier.map_or(Money::ZERO, ProgressLine::to_date)),
        done: Cents(done),
        stored: Cents(written.stored.value),
        bears_retainage: written.bears_retainage,
    }
}

fn over_value(written: &LineWritten, line: &ProgressLine, problems: &mut Problems) {
    let (value, to_date) = (line.value.0, line.to_date());
    let within = if value < Money::ZERO {
        value <= to_date && to_date <= Money::ZERO
    } else {
        Money::ZERO <= to_date && to_date <= value
    };
    if !within {
        let says = &line.says;
        let message = format!("`{says}` has {to_date} done and stored, and its value is {value}");
        problems.push(
            Problem::new("over-value", message)
                .at(written.says.place)
                .help("a line is billed up to its value; more work needs a change order first"),
        );
    }
}

/// A line that was billed has to stay, or what was billed of it could not be told.
fn missing(written: &ProgressWritten, before: Option<&Progress>, problems: &mut Problems) {
    let earlier = before.into_iter().flat_map(|before| &before.lines);
    for line in earlier {
        let mut lines = written.lines.iter();
        if !lines.any(|one| one.says.value == line.says) {
            let says = &line.says;
            let message = format!(
                "`{says}` was in the schedule of the invoice before and is not in this one"
            );
            problems.push(
                Problem::new("line-missing", message)
                    .at(written.place)
                    .help("keep every line and its name; new lines may follow"),
            );
        }
    }
}

/// What is withheld to date, and of what; rounded once.
fn retained(share: Share, lines: &[ProgressLine]) -> (String, Money) {
    let bearing = lines.iter().filter(|one| one.bears_retainage);
    let base: Money = bearing.map(ProgressLine::to_date).sum();
    match share {
        Share::Amount(amount) => (String::new(), amount),
        Share::Rest => (String::new(), base),
        Share::Percent(percent) => (
            format!("{percent} of {base}"),
            rounding::to_cents(base.dollars() * percent.fraction()),
        ),
        Share::Fraction { top, bottom } => (
            format!("{top}/{bottom} of {base}"),
            rounding::to_cents(base.dollars() * top / bottom),
        ),
    }
}
