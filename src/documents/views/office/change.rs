//! A change order for the office: what each part costs and brings.

use rust_decimal::Decimal;

use super::columns::{Stand, set};
use crate::office::record::{Change, ChangeWork};
use crate::values::{Amount, Money, Unit};

/// Every line of its cost, then what the customer pays.
pub fn text(number: &str, change: &Change, floor: Decimal) -> String {
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
        let direct = work.lines.iter().filter(|line| line.class.is_some());
        rows.extend(direct.map(|line| {
            vec![
                word.to_owned(),
                line.cause.clone(),
                line.quantity
                    .map(|quantity| Amount::new(quantity.0, Unit::Plain).number())
                    .unwrap_or_default(),
                line.unit.clone().unwrap_or_default(),
                line.amount.0.plain(),
            ]
        }));
        rows.push(vec![
            word.to_owned(),
            format!(
                "cost {}, price {}{}",
                work.cost.0,
                work.price.0,
                margin(work, floor)
            ),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }
    out.extend(set(
        &[
            Stand::Left,
            Stand::Left,
            Stand::Right,
            Stand::Left,
            Stand::Right,
        ],
        &rows,
    ));
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
fn margin(work: &ChangeWork, floor: Decimal) -> String {
    let price = work.price.0.dollars();
    if price <= Money::ZERO.dollars() {
        return String::new();
    }
    let margin = (price - work.cost.0.dollars()) / price * Decimal::ONE_HUNDRED;
    let shown = super::margin(margin, floor);
    if margin < floor && !work.is_deducted {
        format!(
            ", margin {shown}: below your floor of {}%",
            floor.normalize()
        )
    } else {
        format!(", margin {shown}")
    }
}
