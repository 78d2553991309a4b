//! A change order for the office: what each part costs and brings.

use rust_decimal::Decimal;

use super::Margin;
use crate::documents::table::Align::{Left, Right};
use crate::documents::table::table;
use crate::office::record::{Change, ChangeWork, Line};
use crate::values::{Amount, Percent, Unit};

/// Every line of its cost, then what the customer pays.
pub fn text(number: &str, change: &Change, floor: Decimal) -> String {
    let floor = Percent::new(floor);
    let mut out = vec![format!(
        "change      {number}-C{}, {}",
        change.change, change.title
    )];
    let mut rows = Vec::new();
    for work in &change.work {
        let word = if work.is_deducted {
            "deducted"
        } else {
            "added"
        };
        let row = |line: &Line| {
            let quantity = line
                .quantity
                .map(|one| Amount::new(one.0, Unit::Plain).number());
            vec![
                word.to_owned(),
                line.cause.clone(),
                quantity.unwrap_or_default(),
                line.unit.clone().unwrap_or_default(),
                line.amount.0.plain(),
            ]
        };
        rows.extend(
            work.lines
                .iter()
                .filter(|line| line.class.is_some())
                .map(row),
        );
        let (cost, price, margin) = (work.cost.0, work.price.0, margin(work, floor));
        let sums = format!("cost {cost}, price {price}{margin}");
        rows.push(vec![word.to_owned(), sums]);
    }
    out.extend(table(&[Left, Left, Right, Left, Right], &rows));
    for line in change.lines.iter().skip(change.work.len()) {
        out.push(format!("line        {}: {}", line.says, line.price.0));
    }
    let figures = &change.figures;
    out.push(format!("price       {}", figures.price.0));
    for tax in &figures.taxes {
        out.push(format!("tax         {} {}", tax.amount.0, tax.name));
    }
    out.push(format!("TOTAL       {}", figures.total.0));
    if change.days != 0 {
        out.push(format!("days        {:+}", change.days));
    }
    out.join("\n") + "\n"
}

/// `, margin 20.06%`, and a word where what is added earns less than the owner wants.
fn margin(work: &ChangeWork, floor: Percent) -> String {
    let margin = Margin {
        number: work.margin(),
        floor,
    };
    match margin.shown() {
        None => String::new(),
        Some(shown) if margin.is_below() && !work.is_deducted => {
            format!(", margin {shown}: below your floor of {floor}")
        }
        Some(shown) => format!(", margin {shown}"),
    }
}
