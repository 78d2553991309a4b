//! From direct cost to the total: overhead, contingency, profit, minimum, rounding, tax, each a line.

use super::least::least_charges;
use super::lines::{Cause, LineItem, Tier};
use crate::input::book::Class;
use crate::input::business::{PricePolicy, TaxBase, TaxRule};
use crate::input::job::{Discount, Takeoff};
use crate::input::phrases::{ContingencyBase, Off, Profit};
use crate::reading::At;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Money, Percent, Unit};

/// What the takeoff says of the price itself.
#[derive(Clone, Copy, Debug, Default)]
pub struct PriceSaid<'a> {
    pub fixed: Option<&'a At<Money>>,
    /// Taken off whatever price that makes.
    pub discounts: &'a [Discount],
}

impl<'a> PriceSaid<'a> {
    pub fn of(takeoff: &'a Takeoff) -> Self {
        Self {
            fixed: takeoff.head.fixed_price.as_ref(),
            discounts: &takeoff.head.discounts,
        }
    }
}

/// What makes the price before tax.
const BEFORE_TAX: [Tier; 3] = [Tier::Direct, Tier::Indirect, Tier::Price];

/// Adds overhead, contingency, profit, rounding and tax to priced lines, as lines.
pub fn estimate(
    mut lines: Vec<LineItem>,
    policy: &PricePolicy,
    said: PriceSaid<'_>,
) -> Vec<LineItem> {
    least_charges(&mut lines);
    for tax in &policy.taxes {
        if tax.base == TaxBase::Purchases {
            purchase_tax(&mut lines, tax);
        }
    }
    let direct = subtotal(&lines, "direct cost", &[Tier::Direct]);
    let overhead = Quantity::said("overhead", &policy.overhead);
    let overhead = of(&direct) * &overhead;
    let overhead = Quantity::money("percent of direct cost", "overhead", overhead);
    add(&mut lines, Cause::Overhead, Tier::Indirect, overhead);
    let contingency = contingency(&lines, policy, &direct);
    add(&mut lines, Cause::Contingency, Tier::Indirect, contingency);
    let cost = subtotal(&lines, "cost", &[Tier::Direct, Tier::Indirect]);
    match said.fixed {
        Some(fixed) => {
            let price = Quantity::given("price fixed by you", fixed.value.into(), fixed.place);
            let rest = of(&price) - &cost;
            let rest = Quantity::money("what the fixed price leaves", "price fixed by you", rest);
            add(&mut lines, Cause::Fixed, Tier::Price, rest);
        }
        None => sell(&mut lines, policy, &cost),
    }
    let before = subtotal(&lines, "price before discounts", &BEFORE_TAX);
    lines.extend(said.discounts.iter().map(|one| taken_off(one, &before)));
    for tax in &policy.taxes {
        sales_tax(&mut lines, tax);
    }
    lines
}

/// A percentage is of the price before all discounts, so that their order says nothing.
fn taken_off(discount: &Discount, price: &Quantity) -> LineItem {
    let (place, says) = (discount.off.place, discount.says.clone());
    let (how, term, percent) = match discount.off.value {
        Off::Percent(value) => {
            let percent = Quantity::said("discount", &At { value, place });
            let off = of(price) * &percent;
            ("percent of the price, taken off", off, Some(percent))
        }
        Off::Amount(value) => {
            let off = Quantity::said("discount", &At { value, place });
            ("taken off", of(&off), None)
        }
    };
    let amount = Quantity::money(how, format!("taken off, {says}"), number(0) - term);
    LineItem {
        quantity: percent,
        ..LineItem::new(Cause::Discount(says), Tier::Price, amount)
    }
}

/// Of direct cost, or of direct cost and overhead.
fn contingency(lines: &[LineItem], policy: &PricePolicy, direct: &Quantity) -> Quantity {
    let name = "contingency";
    let percent = policy.contingency.clone().map(|of| of.percent);
    let percent = Quantity::said(name, &percent);
    match policy.contingency.value.on {
        ContingencyBase::Direct => {
            Quantity::money("percent of direct cost", name, of(direct) * &percent)
        }
        ContingencyBase::DirectAndOverhead => {
            let sides = [Tier::Direct, Tier::Indirect];
            let base = subtotal(lines, "direct cost and overhead", &sides);
            let how = "percent of direct cost and overhead";
            Quantity::money(how, name, of(&base) * &percent)
        }
    }
}

fn subtotal(lines: &[LineItem], name: &'static str, sides: &[Tier]) -> Quantity {
    let parts = lines.iter().filter(|line| sides.contains(&line.side));
    Quantity::money("lines added up", name, sum(parts.map(|line| &line.amount)))
}

fn add(lines: &mut Vec<LineItem>, cause: Cause, side: Tier, amount: Quantity) {
    if !amount.value().is_zero() {
        lines.push(LineItem::new(cause, side, amount));
    }
}

/// A direct cost that bears overhead; it falls on what is taxed when bought.
fn purchase_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let taxed = lines.iter().filter(|line| line.taxed);
    let base = sum(taxed.map(|line| &line.amount));
    let base = Quantity::money("taxed purchases added up", "taxed purchases", base);
    let rate = Quantity::said(tax.name.clone(), &tax.rate);
    let amount = Quantity::money(
        "paid by you on what you buy",
        format!("{} on purchases", tax.name),
        of(&base) * &rate,
    );
    if !amount.value().is_zero() {
        lines.push(LineItem {
            class: Some(Class::Fee),
            ..LineItem::new(Cause::PurchaseTax(tax.name.clone()), Tier::Direct, amount)
        });
    }
}

/// Profit, then the minimum job, then rounding up, before tax.
fn sell(lines: &mut Vec<LineItem>, policy: &PricePolicy, cost: &Quantity) {
    let percent = |value: Percent| {
        let place = policy.profit.place;
        Quantity::said("profit", &At { value, place })
    };
    let (how, profit) = match policy.profit.value {
        Profit::Markup(markup) => ("markup: percent of cost", of(cost) * &percent(markup)),
        Profit::Margin(margin) => (
            "margin: cost ÷ (1 − margin) − cost",
            of(cost) / (number(1) - &percent(margin)) - cost,
        ),
    };
    let profit = Quantity::money(how, "profit", profit);
    add(lines, Cause::Profit, Tier::Price, profit);
    let given = |name, rule: &At<Money>| Quantity::given(name, rule.value.into(), rule.place);
    let before = subtotal(lines, "price before minimum", &BEFORE_TAX);
    if before.as_money() < policy.minimum.value {
        let up = of(&given("minimum job", &policy.minimum)) - &before;
        let up = Quantity::money("minimum − price", "minimum job", up);
        add(lines, Cause::Minimum, Tier::Price, up);
    }
    let before = subtotal(lines, "price before rounding", &BEFORE_TAX);
    let rounded = of(&before).up_to(&given("round up to", &policy.round_up_to));
    let rounded = Quantity::by("up to a multiple", "rounded price", Unit::Dollar, rounded);
    let up = of(&rounded) - &before;
    let up = Quantity::money("rounded price − price", "rounding", up);
    add(lines, Cause::Rounding, Tier::Price, up);
}

fn sales_tax(lines: &mut Vec<LineItem>, tax: &TaxRule) {
    let price = subtotal(lines, "price before tax", &BEFORE_TAX);
    let rate = Quantity::said(tax.name.clone(), &tax.rate);
    let amount = match tax.base {
        TaxBase::Sale => Quantity::money(
            "rate × price before tax, once",
            tax.name.clone(),
            of(&price) * &rate,
        ),
        TaxBase::Receipts => receipts_tax(&price, &rate, tax),
        TaxBase::Materials => {
            let direct = subtotal(lines, "direct cost", &[Tier::Direct]);
            let material = lines
                .iter()
                .filter(|line| line.class == Some(Class::Material));
            let materials = sum(material.map(|line| &line.amount));
            let materials = Quantity::money("materials added up", "materials", materials);
            let base = Quantity::money(
                "price before tax × materials ÷ direct cost, to the cent",
                "materials at the selling price",
                of(&price) * &materials / &direct,
            );
            Quantity::money(
                "rate × materials at the selling price, once",
                tax.name.clone(),
                of(&base) * &rate,
            )
        }
        // It is among the costs.
        TaxBase::Purchases => return,
    };
    add(lines, Cause::Tax(tax.name.clone()), Tier::Tax, amount);
}

/// A tax on receipts that hold the tax itself, rounded once.
pub(super) fn receipts_tax(price: &Quantity, rate: &Quantity, tax: &TaxRule) -> Quantity {
    Quantity::money(
        "price before tax × rate ÷ (1 − rate), since the tax is received too",
        tax.name.clone(),
        of(price) * rate / (number(1) - of(rate)),
    )
}

#[cfg(test)]
mod tests;
