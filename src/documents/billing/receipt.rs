//! A receipt for money that came in, or went back.

use std::cmp::Ordering;

use super::{Billing, blank, row, signs};
use crate::documents::views::bill::{AmountRow, BillView};
use crate::office::account::Account;
use crate::office::record::Payment;
use crate::values::Money;

/// Everything a receipt says.
pub fn receipt(of: Billing<'_>, payment: &Payment) -> Option<BillView> {
    let after = of.account.with_payment(of.day, payment);
    let name = format!("{}, payment {}", of.number, payment.payment);
    let heading = format!("Receipt for payment {}", payment.payment);
    let mut view = blank(of, "Receipt", &name, &heading)?;
    view.head.amount = payment.amount.0.to_string();
    view.head.amount_sentence = format!("Received {}: {}. Thank you.", of.day.long(), payment.how);
    let open = after.owed();
    view.head.pay_by = match open.cmp(&Money::ZERO) {
        Ordering::Greater => format!("{open} of what is billed is still open"),
        Ordering::Less => format!("{} is to your credit", -open),
        Ordering::Equal => "All that is billed is paid".to_owned(),
    };
    "What it pays".clone_into(&mut view.agreed_heading);
    view.agreed = pays(of, payment, &after);
    view.paid = stands(&after, of.account.paid(), payment.amount.0);
    Some(view)
}

/// Everything a refund says.
pub fn refund(of: Billing<'_>, refund: &Payment) -> Option<BillView> {
    let name = format!("{}, refund {}", of.number, refund.payment);
    let mut view = blank(of, "Refund", &name, &format!("Refund {}", refund.payment))?;
    let before = -of.account.owed();
    let after = before - refund.amount.0;
    view.head.amount = refund.amount.0.to_string();
    view.head.amount_sentence = format!("Paid back to you {}: {}", of.day.long(), refund.how);
    view.agreed = vec![
        row("To your credit before", before.plain(), false),
        row("This refund", signs(-refund.amount.0), false),
        row("To your credit now", after.to_string(), true),
    ];
    Some(view)
}

/// Invoice by invoice, and what is left over.
fn pays(of: Billing<'_>, payment: &Payment, after: &Account<'_>) -> Vec<AmountRow> {
    let mut left = payment.amount.0;
    let mut rows = Vec::new();
    for (before, after) in of.account.invoices.iter().zip(&after.invoices) {
        let covered = after.paid - before.paid;
        if !covered.is_zero() {
            left = left - covered;
            let invoice = format!("Invoice {}-{}", of.number, after.invoice.invoice);
            rows.push(row(invoice, covered.plain(), false));
        }
    }
    if !left.is_zero() {
        rows.push(row("Paid ahead, to your credit", left.plain(), false));
    }
    rows.push(row("This payment", payment.amount.0.to_string(), true));
    rows
}

/// What was agreed, in what is paid, open and not billed yet.
fn stands(after: &Account<'_>, before: Money, this: Money) -> Vec<AmountRow> {
    let mut rows = vec![
        row("Paid before", before.plain(), false),
        row("This payment", this.plain(), false),
        row("Paid so far", after.paid().plain(), true),
    ];
    let Some(contract) = after.contract() else {
        return rows;
    };
    rows.extend(super::still(after));
    let later = contract.total.0 - after.billed().total.0;
    if !later.is_zero() {
        rows.push(row("Billed later", signed(later), false));
    }
    rows.push(row("The agreed total", contract.total.0.to_string(), true));
    rows
}

/// `790.02`, or `− 12.00`.
fn signed(amount: Money) -> String {
    if amount < Money::ZERO {
        signs(amount)
    } else {
        amount.plain()
    }
}
