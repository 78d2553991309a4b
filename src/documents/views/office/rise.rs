//! What a rise of each item does to the job: the cost, the price, the margin if the price is held.

use super::{Margin, Sheet, headed};
use crate::costing::{Estimated, PriceSaid, Room, Sensitivity, sensitivity};
use crate::documents::column::{Column, Columns};
use crate::values::{Percent, rounding};

/// The questions of this sheet: the job as quoted, by its own book.
pub fn asked<'a>(sheet: &Sheet<'a>) -> Estimated<'a> {
    Estimated {
        bought: sheet.offer.quoted().bought(),
        at: sheet.pricing(),
        said: PriceSaid::of(sheet.takeoff),
    }
}

/// One line for each item, the most costly first.
pub fn text(sheet: &Sheet<'_>, percent: Percent) -> String {
    let floor = sheet.business.price.margin_floor.value;
    let totals = sheet.offer.quoted().totals();
    let mut out = headed(format!(
        "{}: what a rise of {percent} of each item does",
        sheet.job()
    ));
    out.extend([
        format!(
            "Now: cost {}, price before tax {}, margin {}, floor {floor}",
            totals.cost,
            totals.price,
            sheet.margin(&totals).or_none()
        ),
        String::new(),
    ]);
    out.extend(items(sheet).lines(&sensitivity(asked(sheet), &[percent])));
    out.extend([
        String::new(),
        "price then: by the same policy. margin: if today's price is held.".to_owned(),
        format!("room: how far the item alone may rise before that margin falls below {floor}."),
    ]);
    out.join("\n") + "\n"
}

fn items<'a>(sheet: &'a Sheet<'_>) -> Columns<'a, Sensitivity> {
    type Of<'a> = Column<'a, Sensitivity>;
    let dollars = |price: String| format!("${price}");
    Columns(vec![
        Of::left("item", |one| title(sheet, one)).head(""),
        Of::right("price_now", move |one| {
            let prices = prices(sheet, one).into_iter().map(dollars);
            prices.collect::<Vec<_>>().join(" and ")
        }),
        Of::right("more_cost", |one| {
            let rise = one.rises.last();
            rise.map(|rise| format!("+{}", rise.more.plain()))
        }),
        Of::right("cost_then", |one| Some(one.rises.last()?.repriced.cost)),
        Of::right("price_then", |one| Some(one.rises.last()?.repriced.price)),
        Of::right("margin", |one| held(sheet, one).shown()),
        Of::left("warning", |one| held(sheet, one).warning()).head(""),
        Of::right("room", |one| one.room.map(room)),
    ])
}

/// The item in words.
pub fn title(sheet: &Sheet<'_>, one: &Sensitivity) -> String {
    let names = one.items.iter().map(|key| {
        let item = sheet.book.items.get(key);
        item.map_or(key.as_str(), |item| item.called(key))
    });
    names.collect::<Vec<_>>().join(", ")
}

/// Today's price, or each where the pours have different ones.
pub fn prices(sheet: &Sheet<'_>, one: &Sensitivity) -> Vec<String> {
    let mut prices: Vec<String> = Vec::new();
    for day in sheet.days {
        for dated in one.items.iter().filter_map(|key| day.get(key)) {
            let price = dated.price.to_string();
            if !prices.contains(&price) {
                prices.push(price);
            }
        }
    }
    prices
}

/// The margin after the largest rise, if today's price of the job is held.
pub fn held(sheet: &Sheet<'_>, one: &Sensitivity) -> Margin {
    Margin {
        number: one.rises.last().and_then(|rise| rise.held.margin()),
        floor: sheet.business.price.margin_floor.value,
    }
}

/// `43.9%`, cut and not rounded, so that it is never too much.
pub fn room(room: Room) -> String {
    match room {
        Room::UpTo { percent, .. } => {
            let ten = rust_decimal::Decimal::TEN;
            let tenths = rounding::whole_below(percent.number() * ten);
            format!("{}%", rounding::with_places(tenths / ten, 1))
        }
        Room::Far => "over 900%".to_owned(),
        Room::None => "none".to_owned(),
    }
}
