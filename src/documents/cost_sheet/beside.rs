//! What stands beside the cost: rules of buying, parts, choices, what was set, what to look at.

use crate::costing::{self, BuyingRule, OfOne, effects, sections};
use crate::documents::offering::phrases::capital;
use crate::documents::views::cost::{AdviceRow, BuyingRow, ChoiceRow, PartRow, SetRow};
use crate::documents::views::office::{Sheet, two_places};
use crate::reading::Problem;
use crate::trade::order::Section;
use crate::values::{Money, Unit};

/// What each rule costs; all of it is in the lines already.
pub(super) fn buying(sheet: &Sheet<'_>) -> Vec<BuyingRow> {
    let found = effects(sheet.offer.quoted());
    let mut rows: Vec<BuyingRow> = found
        .iter()
        .map(|effect| BuyingRow {
            kind: "plain",
            rule: called(effect.rule),
            item: effect.title.clone(),
            much: two_places(effect.amount).to_string(),
            cost: effect.cost.plain(),
        })
        .collect();
    if 1 < rows.len() {
        let sum: Money = found.iter().map(|effect| effect.cost).sum();
        rows.push(BuyingRow {
            kind: "total",
            rule: "Together",
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
        BuyingRule::Waste => "Waste",
        BuyingRule::PumpPrime => "Pump prime",
        BuyingRule::RoundUp => "Rounded up",
        BuyingRule::BeyondNeed => "Beyond need",
        BuyingRule::SmallestOrder => "Smallest order",
        BuyingRule::LeastCharge => "Smallest charge",
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
    let of_one = costing::of_one(sheet.offer.quoted());
    let each = |section: Option<Section>| {
        let mut found = of_one.iter();
        let is_it = |one: &&OfOne| one.section == section && one.much.unit == Unit::SquareFoot;
        found.find(is_it).map(|one| one.price.plain())
    };
    let row = |kind: &'static str, part: &str, price: Money, section| PartRow {
        kind,
        part: part.to_owned(),
        price: price.plain(),
        of_one: each(section).unwrap_or_default(),
    };
    let mut rows: Vec<PartRow> = split
        .iter()
        .map(|part| {
            row(
                "plain",
                sheet.section(part.section),
                part.price,
                Some(part.section),
            )
        })
        .collect();
    let sum = split.iter().map(|part| part.price).sum();
    rows.push(row("total", "Price before tax", sum, None));
    rows
}

/// Every combination, where there is a choice.
pub(super) fn choices(sheet: &Sheet<'_>) -> Vec<ChoiceRow> {
    if sheet.offer.by_choice.len() < 2 {
        return Vec::new();
    }
    let rows = sheet.offer.by_choice.iter().map(|(choice, priced)| {
        let totals = priced.totals();
        let taken = sheet.taken(choice);
        let margin = sheet.margin(&totals);
        let below = if margin.is_below() {
            ", below floor"
        } else {
            ""
        };
        ChoiceRow {
            taken: if taken.is_empty() {
                "Nothing, as quoted".to_owned()
            } else {
                taken.join(" + ")
            },
            price: totals.price.plain(),
            total: totals.total.plain(),
            margin: format!("{}{below}", margin.or_none()),
        }
    });
    rows.collect()
}

/// What the owner set, beside what was computed.
pub(super) fn set(sheet: &Sheet<'_>) -> Vec<SetRow> {
    let set = sheet.set_by_owner().into_iter();
    set.map(|one| SetRow {
        name: one.quantity.name().to_owned(),
        set: one.quantity.amount().to_string(),
        computed: two_places(one.computed.amount()).to_string(),
        because: one.because,
    })
    .collect()
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
    let capital = capital(&text.replace('`', ""));
    if capital.is_empty() || capital.ends_with(['.', '?', '!']) {
        capital
    } else {
        capital + "."
    }
}
