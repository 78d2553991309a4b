//! One quote a row: its figures as strings, and its bar.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use crate::costing::outcome::Finding;
use crate::documents::figures::margin::{MarginBar, Scale, bar as drawn, key};
use crate::documents::views::office::Margin;
use crate::documents::views::office::reprice::verdict;
use crate::documents::views::reprice_page::QuoteRow;
use crate::press::drawing::{Drawing, Rgb};

pub(super) fn quote((at, one): (usize, &Finding<'_>)) -> QuoteRow {
    let (old, new) = (&one.found.old, &one.found.new);
    QuoteRow {
        number: one.quote.number.clone(),
        customer: one.quote.customer.clone(),
        days_left: if one.is_open() {
            one.days_left.to_string()
        } else {
            "–".to_owned()
        },
        old_cost: old.cost.plain(),
        new_cost: new.cost.plain(),
        promised: old.price.plain(),
        new_price: new.price.plain(),
        margin: one.margin().or_none(),
        verdict: broken_at_colon(&verdict(one.verdict)),
        bleeds: one.is_below_floor(),
        bar: bar(one).map_or_else(String::new, |_| name(at)),
    }
}

/// Too long for one line, it breaks where the advice begins.
fn broken_at_colon(verdict: &str) -> String {
    verdict.split_once(": ").map_or_else(
        || verdict.to_owned(),
        |(because, advice)| format!("{because}: {}", advice.replace(' ', "\u{a0}")),
    )
}

fn bar(one: &Finding<'_>) -> Option<MarginBar> {
    Some(MarginBar {
        then: one.found.old.margin()?,
        now: one.margin().number?,
        floor: one.floor.number(),
    })
}

fn name(at: usize) -> String {
    format!("bar-{at}")
}

/// The bars by name, on one scale, and their key.
pub(super) fn figures(findings: &[Finding<'_>], accent: Rgb) -> BTreeMap<String, Drawing> {
    let bars: Vec<MarginBar> = findings.iter().filter_map(bar).collect();
    let scale = Scale::of(&bars);
    let mut figures = BTreeMap::from([("key".to_owned(), key(&bars, accent))]);
    for (at, one) in findings.iter().enumerate() {
        if let Some(shown) = bar(one) {
            figures.insert(name(at), drawn(shown, scale, accent, aloud(one)));
        }
    }
    figures
}

/// What somebody hears who cannot see the bar.
fn aloud(one: &Finding<'_>) -> String {
    let now = one.margin();
    let then = Margin {
        number: one.found.old.margin(),
        ..now
    };
    let loses = now.number.is_some_and(|now| now < Decimal::ZERO);
    let stands = match (loses, one.is_below_floor()) {
        (true, _) => "a loss, below",
        (false, true) => "below",
        (false, false) => "not below",
    };
    format!(
        "Margin of {}: {} when quoted, {} now if the price is held, {stands} your floor of {}.",
        one.quote.number,
        then.or_none(),
        now.or_none(),
        one.floor
    )
}
