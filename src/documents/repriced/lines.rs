//! One quote a row: its figures as strings, and its bar.

use std::borrow::Cow;
use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::documents::figures::margin::{MarginBar, Scale, bar, key};
use crate::documents::views::office::margin;
use crate::documents::views::office::reprice::{Row, Standing};
use crate::documents::views::reprice_page::QuoteRow;
use crate::press::drawing::{Drawing, Rgb};
use crate::values::{Money, Percent};

/// One quote, by all that the page says of it.
pub(super) struct Line<'a> {
    number: &'a str,
    customer: &'a str,
    pub(super) standing: Standing,
    days_left: i64,
    old_cost: Money,
    new_cost: Money,
    promised: Money,
    new_price: Money,
    /// In percent, when it was quoted and if the price is held.
    then: Option<Decimal>,
    now: Option<Decimal>,
    floor: Percent,
    verdict: Cow<'static, str>,
    notes: &'a [String],
}

pub(super) fn lines<'a>(rows: &[Row<'a>]) -> Vec<Line<'a>> {
    let line = |row: &Row<'a>| Line {
        number: &row.quote.number,
        customer: &row.quote.customer,
        standing: row.quote.standing,
        days_left: row.days_left,
        old_cost: row.found.old.cost,
        new_cost: row.found.new.cost,
        promised: row.found.old.price,
        new_price: row.found.new.price,
        then: row.found.old.margin(),
        now: row.found.margin_held(),
        floor: row.floor,
        verdict: row.verdict.clone(),
        notes: &row.quote.notes,
    };
    rows.iter().map(line).collect()
}

impl<'a> Line<'a> {
    pub(super) fn said(&self) -> impl Iterator<Item = (&'a str, &'a str)> + use<'a> {
        let number = self.number;
        self.notes.iter().map(move |words| (number, words.as_str()))
    }

    pub(super) fn bleeds(&self) -> bool {
        self.now.is_none_or(|now| now < self.floor.number())
    }

    fn bar(&self) -> Option<MarginBar> {
        Some(MarginBar {
            then: self.then?,
            now: self.now?,
            floor: self.floor.number(),
        })
    }

    fn percent(&self, number: Option<Decimal>) -> String {
        number.map_or_else(
            || "none".to_owned(),
            |number| margin(number, self.floor.number()),
        )
    }
}

pub(super) fn quote((at, line): (usize, &Line<'_>)) -> QuoteRow {
    QuoteRow {
        number: line.number.to_owned(),
        customer: line.customer.to_owned(),
        days_left: match line.standing {
            Standing::Open => line.days_left.to_string(),
            Standing::Signed(_) => "–".to_owned(),
        },
        old_cost: line.old_cost.plain(),
        new_cost: line.new_cost.plain(),
        promised: line.promised.plain(),
        new_price: line.new_price.plain(),
        margin: line.percent(line.now),
        verdict: broken_at_colon(&line.verdict),
        bleeds: line.bleeds(),
        bar: line.bar().map_or_else(String::new, |_| name(at)),
    }
}

/// Too long for one line, it breaks where the advice begins.
fn broken_at_colon(verdict: &str) -> String {
    verdict.split_once(": ").map_or_else(
        || verdict.to_owned(),
        |(because, advice)| format!("{because}: {}", advice.replace(' ', "\u{a0}")),
    )
}

fn name(at: usize) -> String {
    format!("bar-{at}")
}

/// The bars by name, on one scale, and their key.
pub(super) fn figures(lines: &[Line<'_>], accent: Rgb) -> BTreeMap<String, Drawing> {
    let bars: Vec<MarginBar> = lines.iter().filter_map(Line::bar).collect();
    let scale = Scale::of(&bars);
    let mut figures = BTreeMap::from([("key".to_owned(), key(&bars, accent))]);
    for (at, line) in lines.iter().enumerate() {
        if let Some(shown) = line.bar() {
            figures.insert(name(at), bar(shown, scale, accent, aloud(line)));
        }
    }
    figures
}

/// What somebody hears who cannot see the bar.
fn aloud(line: &Line<'_>) -> String {
    let loses = line.now.is_some_and(|now| now < Decimal::ZERO);
    let stands = match (loses, line.bleeds()) {
        (true, _) => "a loss, below",
        (false, true) => "below",
        (false, false) => "not below",
    };
    format!(
        "Margin of {}: {} when quoted, {} now if the price is held, {stands} your floor of {}.",
        line.number,
        line.percent(line.then),
        line.percent(line.now),
        line.floor
    )
}
