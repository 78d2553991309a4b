//! From a priced job to the office's cost sheet: finished strings, and the figure beside them.
//!
//! It tells everything that a quote must never tell, so it says on every page whose it is.

mod beside;
mod hours;
mod lines;
mod price;
mod rise;

use std::collections::BTreeMap;

use rust_decimal_macros::dec;

use self::rise::Dearest;
use super::error::DocumentError;
use super::pages::document;
use super::views::cost::{CostView, KeyFigure};
use super::views::office::rise::asked;
use super::views::office::{OFFICE_PAGE, Sheet};
use super::views::quote::FileFacts;
use crate::costing::sensitivity;
use crate::press::drawing::Rgb;
use crate::press::page::Document;
use crate::reading::Problem;
use crate::values::Percent;

/// The rises that are told, the largest last: it is the one that is drawn.
const RISES: [Percent; 3] = [
    Percent::new(dec!(1)),
    Percent::new(dec!(5)),
    Percent::new(dec!(10)),
];

/// The pages of the sheet, for the office.
pub fn cost_document(
    sheet: &Sheet<'_>,
    advice: &[Problem],
    accent: Rgb,
) -> Result<Document, DocumentError> {
    let found = sensitivity(asked(sheet), &RISES);
    let dearest = Dearest::of(sheet, &found);
    let view = view(sheet, advice, &dearest);
    let figures = BTreeMap::from([("rise".to_owned(), rise::figure(sheet, &dearest, accent))]);
    document(&view, &figures)
}

fn view(sheet: &Sheet<'_>, advice: &[Problem], dearest: &Dearest<'_>) -> CostView {
    let name = &sheet.takeoff.name;
    CostView {
        file: FileFacts {
            title: format!("Cost sheet for the office: {name}"),
            subject: format!("What {name} costs, for the office and not for the customer"),
            language: "en-US".to_owned(),
            created: sheet.quoted.noon(),
        },
        firm: sheet.business.firm.name.clone(),
        warning: OFFICE_PAGE,
        beside: format!("Cost sheet, {name}"),
        title: "What this job costs us",
        facts: facts(sheet),
        figures: figures(sheet),
        lines: lines::lines(sheet),
        hours: hours::hours(sheet),
        price: price::price(sheet),
        rise: rise::rise(sheet, dearest),
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
    let margin = sheet.margin(&totals);
    let figure = |label: &str, amount: String| KeyFigure {
        label: label.to_owned(),
        amount,
    };
    let price = if sheet.takeoff.head.fixed_price.is_some() {
        "Price before tax, fixed by you"
    } else {
        "Price before tax"
    };
    let against = if margin.is_below() {
        "BELOW the floor of"
    } else {
        "floor"
    };
    vec![
        figure(price, totals.price.to_string()),
        figure("Our cost", totals.cost.to_string()),
        figure("Profit", (totals.price - totals.cost).to_string()),
        figure(
            &format!("Margin, {against} {}", margin.floor),
            margin.or_none(),
        ),
    ]
}
