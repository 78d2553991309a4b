//! `flatwork jobs` and `flatwork owed` for the bookkeeper's programs.

use serde_json::{Value, json};

use super::table::{Cell, head, or_nothing, written};
use super::{decimal, money};
use crate::documents::views::office::ledger::{Due, Line};
use crate::documents::views::office::win_rate::Tally;

/// The overview as JSON, indented, ending in a line break.
pub fn jobs_json(lines: &[Line]) -> String {
    let lines = lines.iter().map(|line| {
        json!({
            "number": line.number,
            "customer": line.customer,
            "state": line.state,
            "next": line.next,
            "days_left": line.days_left,
            "total": money(line.total),
            "billed": money(line.billed),
            "paid": money(line.paid),
            "owed": money(line.owed),
        })
    });
    format!("{:#}\n", Value::Array(lines.collect()))
}

/// The overview as CSV, by the same names.
pub fn jobs_csv(lines: &[Line]) -> String {
    let names = head(&[
        "number",
        "customer",
        "state",
        "next",
        "days_left",
        "total",
        "billed",
        "paid",
        "owed",
    ]);
    let rows = lines.iter().map(|line| {
        vec![
            Cell::text(line.number.as_str()),
            Cell::text(line.customer.as_str()),
            Cell::text(line.state),
            Cell::text(line.next.as_str()),
            or_nothing(line.days_left, |days| Cell::decimal(days.into())),
            Cell::money(line.total),
            Cell::money(line.billed),
            Cell::money(line.paid),
            Cell::money(line.owed),
        ]
    });
    written(&names, rows.collect())
}

/// Open invoices as JSON.
pub fn owed_json(open: &[Due]) -> String {
    let open = open.iter().map(|one| {
        json!({
            "invoice": one.invoice,
            "customer": one.customer,
            "billed": one.billed.to_string(),
            "due": one.due.to_string(),
            "days_over": one.days_over,
            "open": money(one.open),
        })
    });
    format!("{:#}\n", Value::Array(open.collect()))
}

/// Open invoices as CSV, by the same names.
pub fn owed_csv(open: &[Due]) -> String {
    let names = head(&["invoice", "customer", "billed", "due", "days_over", "open"]);
    let rows = open.iter().map(|one| {
        vec![
            Cell::text(one.invoice.as_str()),
            Cell::text(one.customer.as_str()),
            Cell::text(one.billed.to_string()),
            Cell::text(one.due.to_string()),
            Cell::decimal(one.days_over.into()),
            Cell::money(one.open),
        ]
    });
    written(&names, rows.collect())
}

/// Quotes won by kind of work, as JSON.
pub fn win_rate_json(rates: &[(String, Tally)]) -> String {
    let rates = rates.iter().map(|(kind, tally)| {
        json!({
            "kind": kind,
            "quoted": tally.quoted(),
            "won": tally.won,
            "lost": tally.lost,
            "open": tally.open,
            "withdrawn": tally.withdrawn,
            "percent": tally.percent().map(decimal),
        })
    });
    format!("{:#}\n", Value::Array(rates.collect()))
}

/// Quotes won by kind of work, as CSV, by the same names.
pub fn win_rate_csv(rates: &[(String, Tally)]) -> String {
    let names = head(&[
        "kind",
        "quoted",
        "won",
        "lost",
        "open",
        "withdrawn",
        "percent",
    ]);
    let count = |number: u32| Cell::decimal(number.into());
    let rows = rates.iter().map(|(kind, tally)| {
        vec![
            Cell::text(kind.as_str()),
            count(tally.quoted()),
            count(tally.won),
            count(tally.lost),
            count(tally.open),
            count(tally.withdrawn),
            or_nothing(tally.percent(), Cell::decimal),
        ]
    });
    written(&names, rows.collect())
}
