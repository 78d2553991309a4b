//! What is owed, by how long it has been due.

use super::account::{Account, Billed};
use super::late::{Late, charge};
use crate::input::phrases::LateCharge;
use crate::values::{Day, Money};

/// Days after the due day at which what is owed grows a class older.
const AGES: [i64; 3] = [30, 60, 90];

/// An invoice that is not paid in full.
#[derive(Clone, Debug)]
pub struct OpenInvoice {
    pub invoice: String,
    pub customer: String,
    pub billed: Day,
    pub due: Day,
    /// Days since it was due; below zero before.
    pub days_over: i64,
    pub open: Money,
}

impl OpenInvoice {
    /// The class of its age: 0 is not yet due.
    pub fn age(&self) -> usize {
        age(self.days_over)
    }
}

fn age(days_over: i64) -> usize {
    if days_over <= 0 {
        return 0;
    }
    1 + AGES.iter().filter(|age| **age < days_over).count()
}

/// Every invoice of a job that is not paid in full, and what was refunded in vain.
pub fn open(number: &str, account: &Account<'_>, today: Day) -> Vec<OpenInvoice> {
    let Some((_, quote)) = account.quote() else {
        return Vec::new();
    };
    let of = |name: String, billed: Day, due: Day, open: Money| OpenInvoice {
        invoice: name,
        customer: quote.customer.clone(),
        billed,
        due,
        days_over: today.days_since(due),
        open,
    };
    let refund = account
        .refunds
        .last()
        .map(|(day, _)| of(format!("{number} refund"), *day, *day, account.refund_owed));
    let invoices = account
        .invoices
        .iter()
        .map(|one| of(name(number, one), one.day, one.invoice.due.0, one.open()));
    let all = invoices.chain(refund);
    all.filter(|one| Money::ZERO < one.open).collect()
}

/// Each invoice of a job with a late charge, by its name.
pub fn charges(
    number: &str,
    account: &Account<'_>,
    today: Day,
    rule: LateCharge,
) -> Vec<(String, Late)> {
    let late = |billed: &Billed<'_>| {
        let late = charge(billed.open(), billed.invoice.due.0, today, rule)?;
        Some((name(number, billed), late))
    };
    account.invoices.iter().filter_map(late).collect()
}

fn name(number: &str, billed: &Billed<'_>) -> String {
    format!("{number}-{}", billed.invoice.invoice)
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
