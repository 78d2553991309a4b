//! What late charges come to, below a statement and below what is owed.

use super::columns::{Stand, set};
use crate::input::phrases::LateCharge;
use crate::office::account::Account;
use crate::office::late::{Late, charge};
use crate::values::{Day, Money};

/// Each invoice of a job with a charge, by its name.
pub fn charges(
    number: &str,
    account: &Account<'_>,
    today: Day,
    rule: LateCharge,
) -> Vec<(String, Late)> {
    let late = |billed: &crate::office::account::Billed<'_>| {
        let late = charge(billed.open(), billed.invoice.due.0, today, rule)?;
        Some((format!("{number}-{}", billed.invoice.invoice), late))
    };
    account.invoices.iter().filter_map(late).collect()
}

/// What they come to with their workings; nothing where there are none.
pub fn told(charges: &[(String, Late)], today: Day) -> String {
    if charges.is_empty() {
        return String::new();
    }
    let mut rows: Vec<Vec<String>> = charges
        .iter()
        .map(|(invoice, late)| vec![invoice.clone(), late.amount.plain(), late.working.clone()])
        .collect();
    if 1 < charges.len() {
        let sum: Money = charges.iter().map(|(_, late)| late.amount).sum();
        rows.push(vec!["together".into(), sum.plain(), String::new()]);
    }
    let rows = set(&[Stand::Left, Stand::Right, Stand::Left], &rows).join("\n");
    format!(
        "\nLate charge to {today}, on what is open; it is not billed, and your state's law says what may be asked\n{rows}\n"
    )
}
