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

pub(super) fn rise(sheet: &Sheet<'_>, found: &[Sensitivity]) -> Rise {
    let floor = sheet.business.price.margin_floor.value;
    Rise {
        title: format!("What a rise of {} of each item does", largest()),
        note: format!(
            "Cost and price then: after the largest rise. Margin: if today's price is held. Room: until that margin is down to {floor}, the item rising alone."
        ),
        heads: RISES.iter().map(|percent| format!("+{percent}")).collect(),
        rows: rows(sheet, found),
    }
}

/// The dearest items, and all others at once.
fn rows(sheet: &Sheet<'_>, found: &[Sensitivity]) -> Vec<RiseRow> {
    let (shown, others) = parted(found);
    let mut rows: Vec<RiseRow> = shown
        .iter()
        .map(|one| row(sheet, title(sheet, one), one))
        .collect();
    if let Some(one) = rest(sheet, others) {
        let name = format!("{} other items together", one.items.len());
        rows.push(RiseRow {
            price: String::new(),
            ..row(sheet, name, &one)
        });
    }
    rows
}

/// One item alone is no rest: it stands by itself.
fn parted(found: &[Sensitivity]) -> (&[Sensitivity], &[Sensitivity]) {
    let shown = if found.len() <= ALONE + 1 {
        found.len()
    } else {
        ALONE
    };
    found.split_at(shown)
}

fn rest(sheet: &Sheet<'_>, others: &[Sensitivity]) -> Option<Sensitivity> {
    let items: Vec<_> = others.iter().flat_map(|one| one.items.clone()).collect();
    (!items.is_empty()).then(|| together(asked(sheet), items, &RISES))
}

fn row(sheet: &Sheet<'_>, item: String, one: &Sensitivity) -> RiseRow {
    let last = one.rises.last().map(|rise| rise.repriced);
    RiseRow {
        item,
        price: prices(sheet, one).join(", "),
        more: one.rises.iter().map(|rise| rise.more.plain()).collect(),
        cost: last.map(|totals| totals.cost.plain()).unwrap_or_default(),
        then: last.map(|totals| totals.price.plain()).unwrap_or_default(),
        margin: held(sheet, one).shown().unwrap_or_default(),
        room: one.room.map(room).unwrap_or_default(),
    }
}

/// The dearest items one by one, and all others at once.
pub(super) fn figure(sheet: &Sheet<'_>, found: &[Sensitivity], accent: Rgb) -> Drawing {
    let (shown, others) = parted(found);
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
    let mut bars: Vec<RiseBar> = shown
        .iter()
        .map(|one| bar(title(sheet, one), one, false))
        .collect();
    if let Some(one) = rest(sheet, others) {
        bars.push(bar("Everything else".to_owned(), &one, true));
    }
    drawn(&RiseView {
        bars: &bars,
        rise: &largest(),
        floor: &sheet.business.price.margin_floor.value.to_string(),
        accent,
    })
}
