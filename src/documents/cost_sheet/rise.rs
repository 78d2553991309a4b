//! What rises of single items do: a table of all, and bars of the largest.

use super::RISES;
use crate::costing::{Sensitivity, together};
use crate::documents::figures::rise::{RiseBar, RiseView, rise as drawn};
use crate::documents::views::cost::{Rise, RiseRow};
use crate::documents::views::office::Sheet;
use crate::documents::views::office::rise::{asked, held, prices, room, title};
use crate::press::drawing::{Drawing, Rgb};

/// Items that get a bar and a row of their own; the rest shares one.
const ALONE: usize = 7;

fn largest() -> String {
    RISES[RISES.len() - 1].to_string()
}

/// The dearest items one by one, and all others at once; one item alone is no rest.
pub(super) struct Dearest<'a> {
    shown: &'a [Sensitivity],
    rest: Option<Sensitivity>,
}

impl<'a> Dearest<'a> {
    pub fn of(sheet: &Sheet<'_>, found: &'a [Sensitivity]) -> Self {
        let alone = if found.len() <= ALONE + 1 {
            found.len()
        } else {
            ALONE
        };
        let (shown, others) = found.split_at(alone);
        let others = others.iter().flat_map(|one| one.items.clone());
        let others: Vec<_> = others.collect();
        let rest = (!others.is_empty()).then(|| together(asked(sheet), others, &RISES));
        Self { shown, rest }
    }
}

pub(super) fn rise(sheet: &Sheet<'_>, dearest: &Dearest<'_>) -> Rise {
    let floor = sheet.business.price.margin_floor.value;
    let shown = dearest.shown.iter();
    let mut rows: Vec<RiseRow> = shown
        .map(|one| RiseRow {
            price: prices(sheet, one).join(", "),
            ..row(sheet, title(sheet, one), one)
        })
        .collect();
    rows.extend(dearest.rest.iter().map(|one| {
        let name = format!("{} other items together", one.items.len());
        row(sheet, name, one)
    }));
    Rise {
        title: format!("What a rise of {} of each item does", largest()),
        note: format!(
            "Cost and price then: after the largest rise. Margin: if today's price is held. Room: until that margin is down to {floor}, the item rising alone."
        ),
        heads: RISES.iter().map(|percent| format!("+{percent}")).collect(),
        rows,
    }
}

fn row(sheet: &Sheet<'_>, item: String, one: &Sensitivity) -> RiseRow {
    let last = one.rises.last().map(|rise| rise.repriced);
    RiseRow {
        item,
        price: String::new(),
        more: one.rises.iter().map(|rise| rise.more.plain()).collect(),
        cost: last.map(|totals| totals.cost.plain()).unwrap_or_default(),
        then: last.map(|totals| totals.price.plain()).unwrap_or_default(),
        margin: held(sheet, one).shown().unwrap_or_default(),
        room: one.room.map(room).unwrap_or_default(),
    }
}

/// Bars of what the largest rise costs more.
pub(super) fn figure(sheet: &Sheet<'_>, dearest: &Dearest<'_>, accent: Rgb) -> Drawing {
    let bar = |name: String, one: &Sensitivity, rest: bool| {
        let more = one.rises.last().map(|rise| rise.more).unwrap_or_default();
        RiseBar {
            name,
            dollars: more.dollars(),
            amount: more.plain(),
            margin: held(sheet, one).shown().unwrap_or_default(),
            room: one.room.map(room).unwrap_or_default(),
            rest,
        }
    };
    let shown = dearest.shown.iter();
    let mut bars: Vec<RiseBar> = shown
        .map(|one| bar(title(sheet, one), one, false))
        .collect();
    let rest = dearest.rest.iter();
    bars.extend(rest.map(|one| bar("Everything else".to_owned(), one, true)));
    drawn(&RiseView {
        bars: &bars,
        rise: &largest(),
        floor: &sheet.business.price.margin_floor.value.to_string(),
        accent,
    })
}
