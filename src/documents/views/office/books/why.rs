//! Why one book makes the job dearer than another: prices, then rules, then what follows from both.

use super::{difference, signed};
use crate::costing::{CauseChange, Sold};
use crate::documents::table::Align::{Left, Right};
use crate::documents::table::table;
use crate::documents::views::office::Sheet;
use crate::values::{Amount, Money, Unit, UnitPrice};

/// The changes in the order they are told, and what they make together.
pub(super) fn why(first: &Sheet<'_>, other: &Sheet<'_>, letter: &str) -> Vec<String> {
    let total = |sheet: &Sheet<'_>| sheet.offer.quoted().totals().total;
    let by = total(other) - total(first);
    let found = difference(first, other);
    let mut out = vec![match by.as_cents() {
        0 => format!("{letter} COSTS THE CUSTOMER AS MUCH AS A"),
        1.. => format!("WHY {letter} IS {by} DEARER THAN A, tax included"),
        ..0 => format!("WHY {letter} IS {} CHEAPER THAN A, tax included", -by),
    }];
    let mut rows = Vec::new();
    for (title, changes) in [
        ("other prices, for what A makes you buy", &found.prices),
        (
            "another way of selling, at the prices of its book",
            &found.rules,
        ),
        ("what follows", &found.added),
    ] {
        if changes.is_empty() {
            continue;
        }
        let sum: Money = changes.iter().map(CauseChange::by).sum();
        rows.push(vec![title.to_owned(), String::new(), signed(sum)]);
        rows.extend(changes.iter().map(|change| {
            vec![
                format!("  {}", change.title),
                told(change),
                signed(change.by()),
            ]
        }));
    }
    let together: Money = found.all().map(CauseChange::by).sum();
    let shown = if together.is_zero() {
        together.plain()
    } else {
        signed(together)
    };
    rows.push(vec!["together".into(), String::new(), shown]);
    out.extend(table(&[Left, Left, Right], &rows));
    out
}

/// `7.5 cu yd at $181.00, not $174.00`, or `8 cu yd, not 7.5 cu yd`.
fn told(change: &CauseChange) -> String {
    let at = |price: UnitPrice| Amount::new(price.dollars(), Unit::Dollar).to_string();
    match (change.old_sold, change.new_sold) {
        (Some(old), Some(new)) if old.quantity == new.quantity => match (old.price, new.price) {
            (Some(old), Some(price)) => {
                format!("{} at {}, not {}", new.quantity, at(price), at(old))
            }
            _ => String::new(),
        },
        (Some(old), Some(new)) => format!("{}, not {}", sold(new), sold(old)),
        (None, Some(new)) => format!("{}, not in A", sold(new)),
        (Some(old), None) => format!("{} in A only", sold(old)),
        (None, None) => format!("{}, not {}", change.new, change.old),
    }
}

fn sold(sold: Sold) -> String {
    sold.quantity.to_string()
}
