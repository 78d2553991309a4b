//! How far the work has come, line by line, and what is withheld of it.

use rust_decimal::Decimal;

use super::dash;
use crate::documents::views::bill::{ProgressRow, ProgressView, WithheldRow};
use crate::office::progress::held_back;
use crate::office::record::{Progress, ProgressLine};
use crate::values::{Money, rounding};

pub(super) fn view(of: &Progress) -> ProgressView {
    let mut rows: Vec<ProgressRow> = of.lines.iter().map(line).collect();
    let sum =
        |amount: &dyn Fn(&ProgressLine) -> Money| -> Money { of.lines.iter().map(amount).sum() };
    let (before, to_date) = (sum(&|one| one.before.0), sum(&ProgressLine::to_date));
    rows.push(row(
        "All lines",
        [
            sum(&|one| one.value.0),
            before,
            sum(&|one| one.stored.0),
            to_date,
        ],
        true,
    ));
    let kept = |what: String, before: Money, to_date: Money| withheld(what, before, to_date, false);
    let retainage = if of.retainage.is_empty() {
        "Retainage withheld".to_owned()
    } else {
        format!("Retainage withheld, {}", of.retainage)
    };
    let (retained, released) = (of.retained, of.released);
    let mut sums = vec![
        kept("Work and stored materials".to_owned(), before, to_date),
        kept(retainage, -retained.before.0, -retained.to_date.0),
        kept(
            "Retainage released".to_owned(),
            released.before.0,
            released.to_date.0,
        ),
    ];
    let held: Vec<String> = of
        .held_back
        .iter()
        .map(|one| format!("{} {}", one.says, one.price.0))
        .collect();
    let held = if held.is_empty() {
        "Held back".to_owned()
    } else {
        format!("Held back: {}", held.join(", "))
    };
    sums.push(kept(held, -of.held_before.0, -held_back(of)));
    sums.retain(|row| [&row.before, &row.to_date] != [&dash(Money::ZERO); 2]);
    let earned_before = before - retained.before.0 + released.before.0 - of.held_before.0;
    sums.push(withheld(
        "Earned, before tax".to_owned(),
        earned_before,
        of.earned.0,
        true,
    ));
    ProgressView {
        counted: format!("Counted to {}", of.to.0.long()),
        rows,
        sums,
    }
}

fn line(of: &ProgressLine) -> ProgressRow {
    let amounts = [of.value.0, of.before.0, of.stored.0, of.to_date()];
    row(&of.says, amounts, false)
}

fn row(what: &str, [value, before, stored, to_date]: [Money; 4], is_total: bool) -> ProgressRow {
    let share = if value.is_zero() {
        String::new()
    } else {
        let share = to_date.dollars() * Decimal::ONE_HUNDRED / value.dollars();
        format!("{}%", rounding::to_places(share, 1).normalize())
    };
    ProgressRow {
        what: what.to_owned(),
        value: dash(value),
        before: dash(before),
        now: dash(to_date - before),
        stored: dash(stored),
        to_date: dash(to_date),
        share,
        left: dash(value - to_date),
        is_total,
    }
}

fn withheld(what: String, before: Money, to_date: Money, is_total: bool) -> WithheldRow {
    WithheldRow {
        what,
        before: dash(before),
        now: dash(to_date - before),
        to_date: dash(to_date),
        is_total,
    }
}
