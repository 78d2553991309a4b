//! Totals, payments and unit prices, as printed.

use super::Offering;
use super::phrases::printed;
use rust_decimal::Decimal;

use crate::costing::{self, Cause, Tier, Totals, schedule};
use crate::documents::views::quote::{PaymentRow, Payments, UnitPriceRow};
use crate::input::business::TaxBase;
use crate::input::phrases::Share;
use crate::trade::Quantity;
use crate::values::{Money, rounding};

/// `Total, including 6% sales tax of $690.60`.
pub(super) fn tax_sentence(of: Offering<'_>) -> String {
    let lines = &of.offer.quoted().lines;
    let shown = |name: &str| {
        lines
            .iter()
            .find(|line| line.side == Tier::Tax && line.cause == Cause::Tax(name.to_owned()))
            .map(crate::costing::LineItem::money)
    };
    let taxes = of
        .business
        .price
        .taxes
        .iter()
        .filter(|tax| tax.base != TaxBase::Purchases);
    let parts: Vec<String> = taxes
        .filter_map(|tax| {
            let amount = shown(&tax.name)?;
            let (rate, name) = (tax.rate.value, &tax.name);
            Some(match tax.base {
                TaxBase::Materials => format!("{rate} {name} on materials of {amount}"),
                TaxBase::Receipts => format!("{name} of {amount}, {rate} of this total"),
                TaxBase::Sale | TaxBase::Purchases => format!("{rate} {name} of {amount}"),
            })
        })
        .collect();
    if parts.is_empty() {
        "Total".to_owned()
    } else {
        format!("Total, including {}", parts.join(" and "))
    }
}

/// `Price $4,500.00 less $225.00, 5%: Two patios at once; less $150.00: Your own gravel`.
pub(super) fn discounts(of: Offering<'_>) -> String {
    let priced = of.offer.quoted();
    let mut price = priced.totals().price;
    let mut less = Vec::new();
    for line in &priced.lines {
        let Cause::Discount(says) = &line.cause else {
            continue;
        };
        price = price - line.money();
        let percent = line.quantity.as_ref().map(Quantity::amount);
        let percent = percent.map_or_else(String::new, |percent| format!(", {percent}"));
        less.push(format!(
            "less {}{percent}: {}",
            -line.money(),
            printed(says)
        ));
    }
    if less.is_empty() {
        return String::new();
    }
    format!("Price {price}; {}", less.join("; "))
}

pub(super) fn payments(of: Offering<'_>, totals: &Totals) -> Payments {
    let payments = costing::payments(of.business, &of.offer.quoted().needs.crew);
    let parts = schedule(totals.total, payments);
    let rows = payments
        .iter()
        .zip(parts)
        .enumerate()
        .map(|(i, (payment, part))| PaymentRow {
            event: payment.when.clone(),
            share: match payment.share {
                Share::Percent(percent) => percent.to_string(),
                Share::Fraction { top, bottom } => format!("{top}/{bottom}"),
                Share::Rest => "rest".to_owned(),
                Share::Amount(_) => String::new(),
            },
            amount: if i == 0 {
                part.to_string()
            } else {
                part.plain()
            },
        });
    let note = (!of.takeoff.options.is_empty()).then(|| {
        "Choices on page\u{a0}{page:choices} change each payment in proportion.".to_owned()
    });
    Payments {
        rows: rows.collect(),
        total: totals.total.to_string(),
        note,
    }
}

/// What hidden ground costs, before tax and with the tax on the sale.
pub(super) fn unit_prices(of: Offering<'_>) -> Vec<UnitPriceRow> {
    let taxes = || {
        of.business
            .price
            .taxes
            .iter()
            .filter(|tax| matches!(tax.base, TaxBase::Sale | TaxBase::Receipts))
    };
    let with_tax = |price: Money| {
        price
            + taxes()
                .map(|tax| {
                    let rate = tax.rate.value.fraction();
                    let on = match tax.base {
                        TaxBase::Receipts => price.dollars() / (Decimal::ONE - rate),
                        TaxBase::Sale | TaxBase::Materials | TaxBase::Purchases => price.dollars(),
                    };
                    rounding::to_cents(on * rate)
                })
                .sum()
    };
    of.business
        .unforeseen
        .iter()
        .zip(&of.offer.unit_prices)
        .map(|(one, cost)| UnitPriceRow {
            work: one.what.clone(),
            unit: format!("per {}", one.per),
            price: cost.price.plain(),
            with_tax: with_tax(cost.price).plain(),
        })
        .collect()
}
