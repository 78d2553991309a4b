//! From a priced job to the office's cost sheet: finished strings, and the figure beside them.
//!
//! It tells everything that a quote must never tell, so it says on every page whose it is.

mod beside;
mod hours;
mod lines;
mod price;
mod rise;

use std::collections::BTreeMap;

use super::views::cost::{CostView, KeyFigure};
use super::views::office::{Sheet, margin};
use super::views::quote::FileFacts;
use crate::costing::{Sensitivity, sensitivity};
use crate::press::drawing::{Drawing, Rgb};
use crate::reading::Problem;
use crate::values::Percent;
use rust_decimal_macros::dec;

/// The rises that are told, the largest last: it is the one that is drawn.
const RISES: [Percent; 3] = [
    Percent::new(dec!(1)),
    Percent::new(dec!(5)),
    Percent::new(dec!(10)),
];

/// The sheet and its figures by name.
pub fn cost_sheet(
    sheet: &Sheet<'_>,
    advice: &[Problem],
    accent: Rgb,
) -> (CostView, BTreeMap<String, Drawing>) {
    let found = sensitivity(super::views::office::rise::asked(sheet), &RISES);
    let figure = rise::figure(sheet, &found, accent);
    (
        view(sheet, advice, &found),
        BTreeMap::from([("rise".to_owned(), figure)]),
    )
}

fn view(sheet: &Sheet<'_>, advice: &[Problem], found: &[Sensitivity]) -> CostView {
    let name = &sheet.takeoff.name;
    CostView {
        file: FileFacts {
            title: format!("Cost sheet for the office: {name}"),
            subject: format!("What {name} costs, for the office and not for the customer"),
            language: "en-US".to_owned(),
            created: sheet.quoted.noon(),
        },
        firm: sheet.business.firm.name.clone(),
        warning: "For the office\u{a0} –\u{a0} not for the customer".to_owned(),
        beside: format!("Cost sheet, {name}"),
        title: "What this job costs us".to_owned(),
        facts: facts(sheet),
        figures: figures(sheet),
        lines: lines::lines(sheet),
        hours: hours::hours(sheet),
        price: price::price(sheet),
        rise: rise::rise(sheet, found),
        buying: beside::buying(sheet),
        parts: beside::parts(sheet),
        choices: beside::choices(sheet),
        set: beside::set(sheet),
        advice: beside::advice(sheet, advice),
    }
}

/// For whom, when, and which prices.
fn facts(sheet: &Sheet<'_>) -> String {
    let mut days: Vec<String> = Vec::new();
    for (prices, placement) in sheet.days.iter().zip(&sheet.takeoff.placements) {
        let day = match placement.day {
            Some(_) => prices.day.long(),
            None => format!(
                "{} ({} days after the quote)",
                prices.day.long(),
                sheet.business.quote.lead_time.0
            ),
        };
        if !days.contains(&day) {
            days.push(day);
        }
    }
    format!(
        "{}, for {}, quoted {}. Prices of {}, for {}: {}.",
        sheet.takeoff.name,
        sheet.takeoff.customer.name,
        sheet.quoted.long(),
        sheet.book.name,
        if days.len() == 1 {
            "the day of the pour"
        } else {
            "the days of the pours"
        },
        days.join(" and ")
    )
}

fn figures(sheet: &Sheet<'_>) -> Vec<KeyFigure> {
    let totals = sheet.offer.quoted().totals();
    let floor = sheet.business.price.margin_floor.value;
    let held = totals.margin();
    let below = held.is_some_and(|number| number < floor.number());
    let figure = |label: String, amount: String| KeyFigure { label, amount };
    let fixed = sheet.takeoff.head.fixed_price.is_some();
    vec![
        figure(
            if fixed {
                "Price before tax, fixed by you"
            } else {
                "Price before tax"
            }
            .to_owned(),
            totals.price.to_string(),
        ),
        figure("Our cost".to_owned(), totals.cost.to_string()),
        figure(
            "Profit".to_owned(),
            (totals.price - totals.cost).to_string(),
        ),
        figure(
            if below {
                format!("Margin, BELOW the floor of {floor}")
            } else {
                format!("Margin, floor {floor}")
            },
            held.map_or_else(
                || "none".to_owned(),
                |number| margin(number, floor.number()),
            ),
        ),
    ]
}
