//! From direct cost to the total: overhead, contingency, profit, minimum, rounding, tax, each a line.

use super::{Cause, LineItem, Side};
use crate::input::book::Class;
use crate::input::business::{PricePolicy, TaxBase, TaxRule};
use crate::input::phrases::{ContingencyBase, Profit};
use crate::reading::At;
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Money, Percent, Unit};

/// Adds overhead, contingency, profit, rounding and tax to priced lines, as lines.
pub fn estimate(
    mut lines: Vec<LineItem>,
    policy: &PricePolicy,
    fixed: Option<&At<Money>>,
) -> Vec<LineItem> {
    for tax in policy
        .taxes
        .iter()
        .filter(|tax| tax.base == TaxBase::Purchases)
    {
        purchase_tax(&mut lines, tax);
    }
    let direct = subtotal(&lines, "direct cost", &[Side::Direct]);
    let overhead = Quantity::percent("overhead", &policy.overhead);
    add(
        &mut lines,
        Cause::Overhead,
        Side::Indirect,
        Quantity::money(
            "percent of direct cost",
            "overhead",
            of(&direct) * &overhead,
        ),
    );
    let contingency = contingency(&lines, policy, &direct);
    add(&mut lines, Cause::Contingency, Side::Indirect, contingency);
    let cost = subtotal(&lines, "cost", &[Side::Direct, Side::Indirect]);
    match fixed {
        Some(fixed) => {
            let price = Quantity::given("price fixed by you", fixed.value.into(), fixed.place);
            let rest = Quantity::money(
                "what the fixed price leaves",
                "price fixed by you",
                of(&price) - &cost,
            );
            add(&mut lines, Cause::Fixed, Side::Price, rest);
        }
        None => sell(&mut lines, policy, &cost),
    }
    for tax in policy
        .taxes
        .iter()
        .filter(|tax| tax.base != TaxBase::Purchases)
    {
        sales_tax(&mut lines, tax);
    }
    lines
}

/// Of direct cost, or of direct cost and overhead.
fn contingency(lines: &[LineItem], policy: &PricePolicy, direct: &Quantity) -> Quantity {
    let percent = Quantity::percent(
        "contingency",
        &policy.contingency.clone().map(|of| of.percent),
    );
    match policy.contingency.value.on {
        ContingencyBase::Direct => Quantity::money(
            "percent of direct cost",
            "contingency",
            of(direct) * &percent,
        ),
        ContingencyBase::DirectAndOverhead => {
            let base = subtotal(
                lines,
                "direct cost and overhead",
                &[Side::Direct, Side::Indirect],
            );
            Quantity::money(
                "percent of direct cost and overhead",
                "contingency",
                of(&base) * &percent,
            )
        }
    }
}

fn subtotal(lines: &[LineItem], name: &str, sides: &[Side]) -> Quantity {
    let parts = lines
        .iter()
        .filter(|line| sides.contains(&line.side))
        .map(|line| &line.amount);
    Quantity::money("lines added up", name, sum(parts))
}

fn add(lines: &mut Vec<LineItem>, cause: Cause, side: Side, amount: Quantity) {
    if amount.value().is_zero() {
        return;
    }
    lines.push(LineItem {
        title: cause.title(),
        cause,
        side,
        class: None,
        amount,
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
    });
}

/// A direct cost that bears overhead; it falls on what is taxed when bought.
fn purchase_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let base = Quantity::money(
        "taxed purchases added up",
        "taxed purchases",
        sum(lines
            .iter()
            .filter(|line| line.taxed)
            .map(|line| &line.amount)),
    );
    let rate = Quantity::percent(tax.name.as_str(), &tax.rate);
    let amount = Quantity::money(
        "paid by you on what you buy",
        format!("{} on purchases", tax.name),
        of(&base) * &rate,
    );
    if amount.value().is_zero() {
        return;
    }
    let cause = Cause::PurchaseTax(tax.name.clone());
    lines.push(LineItem {
        title: cause.title(),
        cause,
        side: Side::Direct,
        class: Some(Class::Fee),
        amount,
        quantity: None,
        price: None,
        taxed: false,
        shares: Vec::new(),
    });
}

/// Profit, then the minimum job, then rounding up, before tax.
fn sell(lines: &mut Vec<LineItem>, policy: &PricePolicy, cost: &Quantity) {
    let percent = |percent: Percent| {
        Quantity::percent(
            "profit",
            &At {
                value: percent,
                place: policy.profit.place,
            },
        )
    };
    let profit: (Term, &'static str) = match policy.profit.value {
        Profit::Markup(markup) => (of(cost) * &percent(markup), "markup: percent of cost"),
        Profit::Margin(margin) => (
            of(cost) / (number(1) - &percent(margin)) - cost,
            "margin: cost ÷ (1 − margin) − cost",
        ),
    };
    add(
        lines,
        Cause::Profit,
        Side::Price,
        Quantity::money(profit.1, "profit", profit.0),
    );
    let before = subtotal(
        lines,
        "price before minimum",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    if before.as_money() < policy.minimum.value {
        let minimum = Quantity::given(
            "minimum job",
            policy.minimum.value.into(),
            policy.minimum.place,
        );
        add(
            lines,
            Cause::Minimum,
            Side::Price,
            Quantity::money("minimum − price", "minimum job", of(&minimum) - &before),
        );
    }
    let before = subtotal(
        lines,
        "price before rounding",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    let step = Quantity::given(
        "round up to",
        policy.round_up_to.value.into(),
        policy.round_up_to.place,
    );
    let rounded = Quantity::by(
        "up to a multiple",
        "rounded price",
        Unit::Dollar,
        of(&before).up_to(&step),
    );
    add(
        lines,
        Cause::Rounding,
        Side::Price,
        Quantity::money("rounded price − price", "rounding", of(&rounded) - &before),
    );
}

fn sales_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let price = subtotal(
        lines,
        "price before tax",
        &[Side::Direct, Side::Indirect, Side::Price],
    );
    let rate = Quantity::percent(tax.name.as_str(), &tax.rate);
    let amount = match tax.base {
        TaxBase::Sale => Quantity::money(
            "rate × price before tax, once",
            tax.name.as_str(),
            of(&price) * &rate,
        ),
        TaxBase::Receipts => receipts_tax(&price, &rate, tax),
        TaxBase::Materials => {
            let direct = subtotal(lines, "direct cost", &[Side::Direct]);
            let materials = Quantity::money(
                "materials added up",
                "materials",
                sum(lines
                    .iter()
                    .filter(|line| line.class == Some(Class::Material))
                    .map(|line| &line.amount)),
            );
            let base = Quantity::money(
                "price before tax × materials ÷ direct cost, to the cent",
                "materials at the selling price",
                of(&price) * &materials / &direct,
            );
            Quantity::money(
                "rate × materials at the selling price, once",
                tax.name.as_str(),
                of(&base) * &rate,
            )
        }
        TaxBase::Purchases => return,
    };
    add(lines, Cause::Tax(tax.name.clone()), Side::Tax, amount);
}

/// A tax on receipts that hold the tax itself, rounded once.
pub(super) fn receipts_tax(price: &Quantity, rate: &Quantity, tax: &TaxRule) -> Quantity {
    Quantity::money(
        "price before tax × rate ÷ (1 − rate), since the tax is received too",
        tax.name.as_str(),
        of(price) * rate / (number(1) - of(rate)),
    )
}

#[cfg(test)]
mod tests;
