//! Totals, payments, choices and unit prices, as printed.

use super::around::short;
use super::phrases::capital;
use super::{Offering, english};
use crate::costing::{Cause, Side, Totals, schedule};
use crate::documents::views::quote::{
    ChoiceGroup, ChoiceItem, Choices, CombinationAmount, CombinationRow, Combinations, Payment,
    Payments, UnitPrice,
};
use crate::input::business::TaxBase;
use crate::input::job::{Choice, OptionGroup};
use crate::input::phrases::Share;
use crate::values::{Money, rounding};

/// The most columns the table of combinations has.
const COLUMNS: usize = 4;

/// `Total, including 6% sales tax of $690.60`.
pub(super) fn tax_sentence(of: Offering<'_>) -> String {
    let lines = &of.offer.quoted().lines;
    let shown = |name: &str| {
        lines
            .iter()
            .find(|line| line.side == Side::Tax && line.cause == Cause::Tax(name.to_owned()))
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
            let on = if tax.base == TaxBase::Materials {
                " on materials"
            } else {
                ""
            };
            Some(format!("{} {}{on} of {amount}", tax.rate.value, tax.name))
        })
        .collect();
    if parts.is_empty() {
        "Total".to_owned()
    } else {
        format!("Total, including {}", parts.join(" and "))
    }
}

pub(super) fn payments(of: Offering<'_>, totals: &Totals) -> Payments {
    let parts = schedule(totals.total, &of.business.payments);
    let rows = of
        .business
        .payments
        .iter()
        .zip(parts)
        .enumerate()
        .map(|(i, (payment, part))| Payment {
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

/// The total when exactly this is taken.
fn total(of: Offering<'_>, choice: &Choice) -> Money {
    of.offer.by_choice[choice].totals().total
}

pub(super) fn choices(of: Offering<'_>) -> Choices {
    let quoted = total(of, &of.offer.as_quoted);
    let group = |number: usize, group: &OptionGroup| ChoiceGroup {
        question: group.question.as_ref().map_or_else(
            || "One more thing:".to_owned(),
            |question| format!("{question}:"),
        ),
        how_many: if group.options.len() == 1 {
            "tick or leave"
        } else {
            "tick one at most"
        }
        .to_owned(),
        only_one: 1 < group.options.len(),
        items: group
            .options
            .iter()
            .enumerate()
            .map(|(i, option)| {
                let mut choice = of.offer.as_quoted.clone();
                choice.0[number] = i + 1;
                let with = total(of, &choice);
                let adds = with - quoted;
                let sign = if adds < Money::ZERO { "−" } else { "+" };
                let size = if adds < Money::ZERO { -adds } else { adds };
                ChoiceItem {
                    title: option.title.clone(),
                    description: option.says.clone().unwrap_or_default(),
                    adds: format!("{sign}\u{a0}{}", size.plain()),
                    new_total: with.plain(),
                }
            })
            .collect(),
    };
    let taxed = if of
        .offer
        .quoted()
        .lines
        .iter()
        .any(|line| line.side == Side::Tax)
    {
        " Prices include tax."
    } else {
        ""
    };
    Choices {
        lead: format!("{}{taxed}", english::CHOICES_LEAD),
        groups: of
            .takeoff
            .options
            .iter()
            .enumerate()
            .map(|(i, one)| group(i, one))
            .collect(),
    }
}

/// Every total at once, where there is more than one question; the last question runs across.
pub(super) fn combinations(of: Offering<'_>) -> Option<Combinations> {
    let groups = &of.takeoff.options;
    let (last, others) = groups.split_last()?;
    if others.is_empty() {
        return None;
    }
    let across = last.options.len() < COLUMNS;
    let named = if across { others } else { groups.as_slice() };
    let rows = crate::input::job::choices(named).into_iter().map(|row| {
        let columns: Vec<Choice> = if across {
            (0..=last.options.len())
                .map(|pick| Choice([row.0.clone(), vec![pick]].concat()))
                .collect()
        } else {
            vec![row.clone()]
        };
        let amounts = columns.iter().map(|choice| {
            let as_quoted = *choice == of.offer.as_quoted;
            let total = total(of, choice);
            CombinationAmount {
                text: if as_quoted {
                    total.to_string()
                } else {
                    total.plain()
                },
                as_quoted,
            }
        });
        CombinationRow {
            name: row_name(named, &row),
            amounts: amounts.collect(),
        }
    });
    let heads = if across {
        (0..=last.options.len())
            .map(|pick| head(last, pick))
            .collect()
    } else {
        vec![String::new()]
    };
    let taxed = of
        .offer
        .quoted()
        .lines
        .iter()
        .any(|line| line.side == Side::Tax);
    Some(Combinations {
        note: if taxed { "tax included" } else { "" }.to_owned(),
        heads,
        rows: rows.collect(),
    })
}

fn row_name(groups: &[OptionGroup], row: &Choice) -> String {
    let taken: Vec<String> = row
        .0
        .iter()
        .zip(groups)
        .filter_map(|(&pick, group)| pick.checked_sub(1).map(|i| short(&group.options[i].title)))
        .collect();
    match (taken.is_empty(), groups) {
        (false, _) => taken.join(" + "),
        (true, [only]) => without(only),
        (true, _) => "None of these".to_owned(),
    }
}

fn without(group: &OptionGroup) -> String {
    let noun = match &group.question {
        Some(question) => question
            .split_whitespace()
            .next()
            .unwrap_or("choice")
            .trim_matches(',')
            .to_lowercase(),
        None => few_words(&group.options[0].title),
    };
    format!("No {noun}")
}

fn head(group: &OptionGroup, pick: usize) -> String {
    match pick.checked_sub(1) {
        None => capital(&without(group)).replacen("No ", "no ", 1),
        Some(i) => format!("with {}", few_words(&group.options[i].title)),
    }
}

/// Two words are enough for the head of a column.
fn few_words(title: &str) -> String {
    short(title)
        .split_whitespace()
        .take(2)
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
}

/// What hidden ground costs, before tax and with the tax on the sale.
pub(super) fn unit_prices(of: Offering<'_>) -> Vec<UnitPrice> {
    let taxes = || {
        of.business
            .price
            .taxes
            .iter()
            .filter(|tax| tax.base == TaxBase::Sale)
    };
    let with_tax = |price: Money| {
        price
            + taxes()
                .map(|tax| rounding::to_cents(price.dollars() * tax.rate.value.fraction()))
                .sum()
    };
    of.business
        .unforeseen
        .iter()
        .zip(&of.offer.unit_prices)
        .map(|(one, cost)| UnitPrice {
            work: one.what.clone(),
            unit: format!("per {}", one.per),
            price: cost.price.plain(),
            with_tax: with_tax(cost.price).plain(),
        })
        .collect()
}
