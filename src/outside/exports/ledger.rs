//! `flatwork jobs` and `flatwork owed` for the bookkeeper's programs.

use serde_json::{Value, json};

use super::money;
use super::table::{Cell, head, or_nothing, written};
use crate::documents::views::office::ledger::{Due, Line};

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
