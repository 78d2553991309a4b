//! From a change order on record to the page that is signed.

use super::billing::{Billing, changes, facts, head, including, row, signs};
use super::offering;
use super::views::bill::{AmountRow, Head};
use super::views::change::{ChangeView, WorkView};
use super::views::quote::Term;
use crate::office::record::{Change, ChangeLine, Figures};
use crate::values::{Day, Money};

/// Everything a change order says; none where nothing was signed.
pub fn change(of: Billing<'_>, change: &Change) -> Option<ChangeView> {
    let (signed, _) = of.account.accepted()?;
    let before = of.account.contract()?;
    let after = before.plus(&change.figures);
    let name = format!("{}-C{}", of.number, change.change);
    let total = change.figures.total.0;
    let heading = format!("Change {}: {}", change.change, change.title);
    Some(ChangeView {
        file: facts(of, "Change", &name)?,
        firm: offering::firm(of.business),
        head: Head {
            amount: total.max(-total).to_string(),
            amount_sentence: sentence(&change.figures),
            pay_by: days(change.days),
            ..head(of, "Change", &name, &heading)?
        },
        because: change.because.clone(),
        work: change.lines.iter().filter_map(work).collect(),
        price: price(change),
        agreed: agreed(of, change)?,
        billed: (!change.lines.is_empty())
            .then(|| "A change is billed with the final invoice.".to_owned()),
        acceptance: acceptance(change, signed),
        sum: after.total.0.to_string(),
    })
}

/// What is signed; a change of the time alone has no work to begin.
fn acceptance(change: &Change, signed: Day) -> String {
    let begins = if change.lines.is_empty() {
        ""
    } else {
        " The work of this change begins once both have signed."
    };
    format!(
        "I agree to this change. Everything else stays as we agreed on {}.{begins}",
        signed.long()
    )
}

fn sentence(figures: &Figures) -> String {
    let total = figures.total.0;
    if total.is_zero() {
        return "The agreed sum stays as it is".to_owned();
    }
    if total < Money::ZERO {
        let less = Figures::default().less(figures);
        format!("Taken off the agreed sum{}", including(&less))
    } else {
        format!("Added to the agreed sum{}", including(figures))
    }
}

fn days(days: i32) -> String {
    let count = days.unsigned_abs();
    let word = if count == 1 { "day" } else { "days" };
    match days.signum() {
        0 => "No more and no fewer working days".to_owned(),
        1 => format!("{count} working {word} more"),
        _ => format!("{count} working {word} fewer"),
    }
}

fn work(line: &ChangeLine) -> Option<WorkView> {
    let terms = line.work.iter().map(|one| Term::new(&one.word, &one.text));
    let terms: Vec<Term> = terms.collect();
    let word = if line.price.0 < Money::ZERO {
        "Left out"
    } else {
        "Added"
    };
    (!terms.is_empty()).then(|| WorkView {
        heading: format!("{word}: {}", line.says),
        terms,
    })
}

/// Lines before tax, then each tax, then the total.
fn price(change: &Change) -> Vec<AmountRow> {
    let mut rows: Vec<AmountRow> = change
        .lines
        .iter()
        .map(|line| row(line.says.as_str(), signs(line.price.0), false))
        .collect();
    if rows.is_empty() {
        return rows;
    }
    let figures = &change.figures;
    let taxed = figures.taxes.iter().filter(|tax| !tax.amount.0.is_zero());
    let taxes: Vec<AmountRow> = taxed
        .map(|tax| {
            let name = offering::named(std::slice::from_ref(&tax.name));
            row(name, signs(tax.amount.0), false)
        })
        .collect();
    if !taxes.is_empty() && 1 < rows.len() {
        rows.push(row("Before tax", signs(figures.price.0), true));
    }
    rows.extend(taxes);
    rows.push(row("This change", signs(figures.total.0), true));
    rows
}

/// From what was signed first to what is agreed with this change.
fn agreed(of: Billing<'_>, change: &Change) -> Option<Vec<AmountRow>> {
    let (day, accepted) = of.account.accepted()?;
    let contract = of.account.contract()?;
    let signed = accepted.contract.total.0.plain();
    let mut rows = vec![row(format!("Signed {}", day.long()), signed, false)];
    rows.extend(changes(of.account));
    if 1 < rows.len() {
        rows.push(row("Agreed until now", contract.total.0.plain(), true));
    }
    rows.push(row("This change", signs(change.figures.total.0), false));
    let after = contract.plus(&change.figures).total.0;
    rows.push(row("Agreed with this change", after.to_string(), true));
    Some(rows)
}
