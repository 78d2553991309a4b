//! What has to be said beside the figures of a quote: holds that end too early, units that
//! changed, a load more, the minimum job reached.

use crate::costing::outcome::{AskedQuote, Standing};
use crate::costing::{Books, Bought, Cause, Pricing};
use crate::input::book::{ItemKey, PriceBook};
use crate::trade::order::NeedItem;
use crate::values::{Day, Money, Unit};

pub(super) fn notes(
    quote: &AskedQuote,
    bought: Bought<'_>,
    old: &PriceBook,
    at: Pricing<'_>,
    job: &str,
    today: Day,
) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let first = at.days.iter().map(|day| day.day).min();
    if let Some(pour) = first.filter(|pour| quote.standing == Standing::Open && *pour < today) {
        found.push(format!(
            "was to be poured on {pour}, and has the prices of that day"
        ));
    }
    let mut items: Vec<&ItemKey> = Vec::new();
    for need in bought.needs {
        if let NeedItem::Item(item) = &need.item
            && !items.contains(&&item.value)
        {
            items.push(&item.value);
        }
    }
    for item in items {
        let unit = |book: &PriceBook| book.items.get(item).map(|item| item.unit);
        if let (Some(was), Some(is)) = (unit(old), unit(at.book))
            && was != is
        {
            let (was, is) = (was.symbol(), is.symbol());
            found.push(format!(
                "{item} was sold by the {was} and is now by the {is}: told as a rule, not as a price"
            ));
        }
        let ours = at.book.holds.iter().filter(|hold| {
            let held_for = hold.job.as_deref();
            hold.item.value == *item && held_for.is_none_or(|held_for| held_for == job)
        });
        // Where several holds follow each other, the last one counts.
        let Some(until) = ours.map(|hold| hold.until).max() else {
            continue;
        };
        let mut pours = at.days.iter().map(|day| day.day);
        if let Some(pour) = pours.find(|pour| until < *pour) {
            found.push(format!(
                "the hold on {item} ends {until}, before the pour on {pour}"
            ));
        } else if until < quote.good_until {
            let good = quote.good_until;
            found.push(format!(
                "the hold on {item} ends {until}, and the quote is good until {good}"
            ));
        }
    }
    found
}

/// Steps between the old and the new estimate that a percentage would not show.
pub(super) fn crossed(why: &Books) -> Vec<String> {
    let mut found = Vec::new();
    for change in &why.rules {
        if let (Some(old), Some(new)) = (change.old_sold, change.new_sold)
            && matches!(old.quantity.unit, Unit::Load | Unit::Trip)
            && old.quantity.unit == new.quantity.unit
            && old.quantity.value != new.quantity.value
        {
            let title = &change.title;
            found.push(format!(
                "{title}: {} before, {} now",
                old.quantity, new.quantity
            ));
        }
    }
    let mut added = why.added.iter();
    if let Some(minimum) = added.find(|change| change.cause == Cause::Minimum) {
        if minimum.old == Money::ZERO {
            found.push("falls below your minimum job now".to_owned());
        } else if minimum.new == Money::ZERO {
            found.push("is over your minimum job now".to_owned());
        }
    }
    found
}
