//! What a rise of each item does to the job: the cost, the price, the margin if the price is held.

use super::columns::{Stand, set};
use super::{Sheet, margin};
use crate::costing::{Estimated, Rise, Room, Sensitivity, sensitivity};
use crate::values::{Percent, rounding};

/// The questions of this sheet: the job as quoted, by its own book.
pub fn asked<'a>(sheet: &Sheet<'a>) -> Estimated<'a> {
    Estimated {
        bought: sheet.offer.quoted().bought(),
        at: sheet.pricing(),
        fixed: sheet.takeoff.head.fixed_price.as_ref(),
    }
}

/// One line for each item, the most costly first.
pub fn text(sheet: &Sheet<'_>, percent: Percent) -> String {
    let floor = sheet.business.price.margin_floor.value;
    let totals = sheet.offer.quoted().totals();
    let now = totals.margin().map(|number| margin(number, floor.number()));
    let mut rows = vec![
        [
            "",
            "price now",
            "more cost",
            "cost then",
            "price then",
            "margin",
            "",
            "room",
        ]
        .map(str::to_owned)
        .to_vec(),
    ];
    for one in sensitivity(asked(sheet), &[percent]) {
        rows.extend(one.rises.first().map(|rise| row(sheet, &one, rise)));
    }
    let mut out = vec![
        format!(
            "{}, for {}: what a rise of {percent} of each item does",
            sheet.takeoff.name, sheet.takeoff.customer.name
        ),
        "For the office, not for the customer.".to_owned(),
        String::new(),
        format!(
            "Now: cost {}, price before tax {}, margin {}, floor {floor}",
            totals.cost,
            totals.price,
            now.unwrap_or_else(|| "none".to_owned())
        ),
        String::new(),
    ];
    let stands = [
        Stand::Left,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Right,
        Stand::Left,
        Stand::Right,
    ];
    out.extend(set(&stands, &rows));
    out.extend([
        String::new(),
        "price then: by the same policy. margin: if today's price is held.".to_owned(),
        format!("room: how far the item alone may rise before that margin falls below {floor}."),
    ]);
    out.join("\n") + "\n"
}

fn row(sheet: &Sheet<'_>, one: &Sensitivity, rise: &Rise) -> Vec<String> {
    let floor = sheet.business.price.margin_floor.value.number();
    let held = rise.held.margin();
    vec![
        title(sheet, one),
        now(sheet, one),
        format!("+{}", rise.more.plain()),
        rise.repriced.cost.plain(),
        rise.repriced.price.plain(),
        held.map(|number| margin(number, floor)).unwrap_or_default(),
        match held {
            Some(number) if number < floor => "below floor".to_owned(),
            _ => String::new(),
        },
        room(one.room),
    ]
}

/// The item in words.
pub fn title(sheet: &Sheet<'_>, one: &Sensitivity) -> String {
    let items = one.items.iter();
    let names = items.map(|key| {
        let item = sheet.book.items.get(key);
        item.map_or(key.as_str(), |item| item.called(key))
    });
    names.collect::<Vec<_>>().join(", ")
}

/// Today's price, or each where the pours have different ones.
fn now(sheet: &Sheet<'_>, one: &Sensitivity) -> String {
    let mut prices: Vec<String> = Vec::new();
    for day in sheet.days {
        for dated in one.items.iter().filter_map(|key| day.get(key)) {
            let price = format!("${}", dated.price);
            if !prices.contains(&price) {
                prices.push(price);
            }
        }
    }
    prices.join(" and ")
}

/// `43.9%`, cut and not rounded, so that it is never too much.
pub fn room(room: Option<Room>) -> String {
    match room {
        Some(Room::UpTo { percent, .. }) => {
            let tenths = percent.number() * rust_decimal::Decimal::TEN;
            let whole = rounding::whole_below(tenths);
            format!(
                "{}%",
                rounding::with_places(whole / rust_decimal::Decimal::TEN, 1)
            )
        }
        Some(Room::Far) => "over 900%".to_owned(),
        Some(Room::None) => "none".to_owned(),
        None => String::new(),
    }
}
