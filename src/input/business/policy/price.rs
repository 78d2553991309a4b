//! From cost to price, and the taxes on it.

use rust_decimal::Decimal;

use crate::input::phrases::{Contingency, Profit};
use crate::reading::keys::{keys, placeless};
use crate::reading::{At, Fields, Group, Node, Problem, Problems, Read, words};
use crate::values::{Money, Percent};

keys! {
    pub struct PricePolicy in "`price`" {
        overhead: At<Percent> = "overhead", usual "0%", "of direct cost", "14%";
        contingency: At<Contingency> = "contingency", usual "0%",
            "of direct cost, for what goes wrong; or `3% of cost and overhead`", "3%";
        profit: At<Profit> = "profit", required,
            "markup is on cost, margin is of the price before tax", "markup 25%";
        minimum: At<Money> = "minimum job", usual "0.00", "no job is sold for less, before tax", "1500.00";
        round_up_to: At<Money> = "round up to", usual "0.01",
            "the price before tax goes up to a multiple of this", "10.00";
        margin_floor: At<Percent> = "margin floor", usual "0%", "you are told when a job leaves less", "15%";
        taxes: Vec<TaxRule> = "tax" as "none, one tax, or a list", else "none",
            "`on` is none, sale, receipts, materials or purchases",
            "{on: sale, rate: 6%, name: sales tax}", by taxes, of TaxRule;
    }
}

keys! {
    /// One tax; each is rounded once, on its own.
    pub struct TaxRule in "`tax`" {
        base: TaxBase = "on", else "none",
            "none; sale (added to the price); receipts (added to the price, and on itself too: 2% of all you receive is 2% ÷ (1 − 2%) of the price); materials (at the selling price); purchases (paid by you, a cost)",
            "sale";
        rate: At<Percent> = "rate", required, "the combined rate", "6%";
        name: String = "name", usual "sales tax", "what the customer reads", "sales tax";
    } then leaves_something
}

words! {
    /// What a tax falls on.
    pub enum TaxBase("bad-tax", "no tax falls on `{}`", none_or) {
        /// The whole price before tax.
        Sale "sale";
        /// The price before tax and the tax itself: added so that the rate of the whole is the tax.
        Receipts "receipts";
        /// The share of materials in direct cost, of the price before tax.
        Materials "materials";
        /// What the owner buys: a direct cost, never shown.
        Purchases "purchases";
    }
}

placeless! { TaxBase }

fn taxes(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Vec<TaxRule> {
    let Some(node) = fields.node(key) else {
        return Vec::new();
    };
    let written = if node.is_list() {
        node.items("`tax`", problems)
    } else if node.says("none") {
        Vec::new()
    } else {
        vec![node]
    };
    let taxes = written
        .into_iter()
        .filter_map(|one| tax(one, problems).ok()?);
    taxes.collect()
}

/// Nothing for `on: none`.
fn tax(node: &Node, problems: &mut Problems) -> Read<Option<TaxRule>> {
    let fields = node.fields(TaxRule::TABLE, problems)?;
    if fields.node("on").is_none_or(|on| on.says("none")) {
        return Ok(None);
    }
    TaxRule::read(&fields, problems).map(Some)
}

fn leaves_something(tax: TaxRule, _: &Fields<'_>, problems: &mut Problems) -> Read<TaxRule> {
    let rate = &tax.rate;
    if tax.base != TaxBase::Receipts || rate.value < Percent::new(Decimal::ONE_HUNDRED) {
        return Ok(tax);
    }
    let message = format!("a tax of {} on receipts leaves nothing of them", rate.value);
    let problem = Problem::new("tax-takes-all", message).at(rate.place);
    Err(problems.push(problem.help("write the rate of the whole, such as `2%`")))
}
