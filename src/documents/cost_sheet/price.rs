//! From cost to price: every step with its share of the price before tax.

use rust_decimal::Decimal;

use super::lines::heading;
use crate::costing::{Cause, LineItem, Tier};
use crate::documents::views::cost::PriceRow;
use crate::documents::views::office::{Sheet, cost_groups, group_of};
use crate::input::phrases::{ContingencyBase, Profit};
use crate::values::{Money, rounding};

/// Groups, direct cost, what is added to it, cost, what is added to that, price, tax, total.
pub(super) fn price(sheet: &Sheet<'_>) -> Vec<PriceRow> {
    let quoted = sheet.offer.quoted();
    let totals = quoted.totals();
    let whole = totals.price.dollars();
    let row = |kind: &'static str, label: &str, amount: Money, shared: bool| PriceRow {
        kind,
        label: label.to_owned(),
        amount: amount.plain(),
        share: if shared && !whole.is_zero() {
            let share = amount.dollars() / whole * Decimal::ONE_HUNDRED;
            format!("{}%", rounding::with_places(share, 1))
        } else {
            String::new()
        },
    };
    let of_side = |side: Tier| quoted.lines.iter().filter(move |line| line.side == side);
    let mut rows = Vec::new();
    for group in cost_groups(&quoted.lines) {
        let of_group = of_side(Tier::Direct).filter(|line| group_of(line).as_ref() == Some(&group));
        let sum = of_group.map(LineItem::money).sum();
        rows.push(row("plain", &heading(&group), sum, true));
    }
    for (side, sum) in [
        (Tier::Direct, "Direct cost"),
        (Tier::Indirect, "Our cost"),
        (Tier::Price, "Price before tax"),
        (Tier::Tax, "Total on the quote"),
    ] {
        let shared = side != Tier::Tax;
        if side != Tier::Direct {
            let lines = of_side(side);
            rows.extend(lines.map(|line| row("plain", &label(sheet, line), line.money(), shared)));
        }
        rows.push(row("sum", sum, totals.down_to(side), shared));
    }
    rows
}

/// What a line is, and by which percentage.
fn label(sheet: &Sheet<'_>, line: &LineItem) -> String {
    let policy = &sheet.business.price;
    match &line.cause {
        Cause::Overhead => format!("{}, {} of direct cost", line.title, policy.overhead.value),
        Cause::Contingency => format!(
            "{}, {} of {}",
            line.title,
            policy.contingency.value.percent,
            match policy.contingency.value.on {
                ContingencyBase::Direct => "direct cost",
                ContingencyBase::DirectAndOverhead => "cost and overhead",
            }
        ),
        Cause::Profit => match policy.profit.value {
            Profit::Markup(percent) => format!("{}, {percent} on cost", line.title),
            Profit::Margin(percent) => format!("{}, {percent} of price", line.title),
        },
        Cause::Rounding => format!("Rounded up to the next {}", policy.round_up_to.value),
        Cause::Tax(name) => {
            let tax = policy.taxes.iter().find(|tax| tax.name == *name);
            tax.map_or_else(
                || line.title.clone(),
                |tax| format!("{}, {}", line.title, tax.rate.value),
            )
        }
        Cause::Discount(_) => match &line.quantity {
            Some(percent) => format!("{}, {}", line.title, percent.amount()),
            None => line.title.clone(),
        },
        Cause::Need(_)
        | Cause::LeastCharge(_)
        | Cause::PurchaseTax(_)
        | Cause::Minimum
        | Cause::Fixed => line.title.clone(),
    }
}
