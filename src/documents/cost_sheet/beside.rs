//! What stands beside the cost: rules of buying, parts, choices, what was set, what to look at.

use super::lines::two_places;
use crate::costing::{BuyingRule, effects, sections};
use crate::documents::views::cost::{AdviceRow, BuyingRow, ChoiceRow, PartRow, SetRow};
use crate::documents::views::office::{Sheet, every, margin};
use crate::reading::Problem;
use crate::trade::Working;
use crate::values::Money;

/// What each rule costs; all of it is in the lines already.
pub(super) fn buying(sheet: &Sheet<'_>) -> Vec<BuyingRow> {
    let found = effects(sheet.offer.quoted());
    let mut rows: Vec<BuyingRow> = found
        .iter()
        .map(|effect| BuyingRow {
            kind: "plain".to_owned(),
            rule: called(effect.rule).to_owned(),
            item: effect.title.clone(),
            much: two_places(effect.amount).to_string(),
            cost: effect.cost.plain(),
        })
        .collect();
    if 1 < rows.len() {
        let sum: Money = found.iter().map(|effect| effect.cost).sum();
        rows.push(BuyingRow {
            kind: "total".to_owned(),
            rule: "Together".to_owned(),
            item: "in the lines above already".to_owned(),
            much: String::new(),
            cost: sum.plain(),
        });
    }
    rows
}

const fn called(rule: BuyingRule) -> &'static str {
    match rule {
        BuyingRule::Allowance => "Allowance",
        BuyingRule::PumpPrime => "Pump prime",
        BuyingRule::RoundUp => "Rounded up",
        BuyingRule::SmallestOrder => "Smallest order",
        BuyingRule::ShortLoad => "Short load",
        BuyingRule::Standing => "Standing",
        BuyingRule::CrewDays => "Whole days",
    }
}

/// The price before tax by parts of the job, where there are several.
pub(super) fn parts(sheet: &Sheet<'_>) -> Vec<PartRow> {
    let split = sections(&sheet.offer.quoted().lines);
    if split.len() < 2 {
        return Vec::new();
    }
    let row = |kind: &str, part: &str, price: Money| PartRow {
        kind: kind.to_owned(),
        part: part.to_owned(),
        price: price.plain(),
    };
    let mut rows: Vec<PartRow> = split
        .iter()
        .map(|part| row("plain", sheet.section(part.section), part.price))
        .collect();
    let sum = split.iter().map(|part| part.price).sum();
    rows.push(row("total", "Price before tax", sum));
    rows
}

/// Every combination, where there is a choice.
pub(super) fn choices(sheet: &Sheet<'_>) -> Vec<ChoiceRow> {
    if sheet.offer.by_choice.len() < 2 {
        return Vec::new();
    }
    let floor = sheet.business.price.margin_floor.value.number();
    let rows = sheet.offer.by_choice.iter().map(|(choice, priced)| {
        let totals = priced.totals();
        let taken = sheet.taken(choice);
        let held = totals.margin().map_or_else(
            || "none".to_owned(),
            |number| {
                let below = if number < floor { ", below floor" } else { "" };
                format!("{}{below}", margin(number, floor))
            },
        );
        ChoiceRow {
            taken: if taken.is_empty() {
                "Nothing, as quoted".to_owned()
            } else {
                taken.join(" + ")
            },
            price: totals.price.plain(),
            total: totals.total.plain(),
            margin: held,
        }
    });
    rows.collect()
}

/// What the owner set, beside what was computed.
pub(super) fn set(sheet: &Sheet<'_>) -> Vec<SetRow> {
    let all = every(sheet.offer.quoted());
    let rows = all.iter().filter_map(|quantity| match quantity.working() {
        Working::Set {
            computed, because, ..
        } => Some(SetRow {
            name: quantity.name().to_owned(),
            set: quantity.amount().to_string(),
            computed: two_places(computed.amount()).to_string(),
            because: because.clone(),
        }),
        Working::Given(_) | Working::Shape { .. } | Working::Plan { .. } | Working::Rule { .. } => {
            None
        }
    });
    rows.collect()
}

/// Advice in print: what, and the line it is about; `check` says what to do.
pub(super) fn advice(sheet: &Sheet<'_>, advice: &[Problem]) -> Vec<AdviceRow> {
    let rows = advice.iter().map(|one| AdviceRow {
        message: sentence(&one.message),
        at: one
            .place
            .map(|place| file_name(&sheet.line_of(place)))
            .unwrap_or_default(),
    });
    rows.collect()
}

/// The file without its folders: there is little room.
fn file_name(line: &str) -> String {
    line.rsplit(['/', '\\']).next().unwrap_or(line).to_owned()
}

/// A message of the terminal as a sentence: a capital, no backticks, a full stop.
fn sentence(text: &str) -> String {
    let plain = text.replace('`', "");
    let mut chars = plain.chars();
    let capital = chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + chars.as_str()
    });
    if capital.is_empty() || capital.ends_with(['.', '?', '!']) {
        capital
    } else {
        capital + "."
    }
}
