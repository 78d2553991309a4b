//! What has to be said beside the figures of a quote: holds that end too early, units that changed.

use crate::costing::{Bought, Prices};
use crate::documents::views::office::reprice::Quote;
use crate::input::book::{ItemKey, PriceBook};
use crate::trade::order::NeedItem;

pub(super) fn notes(
    quote: &Quote,
    bought: Bought<'_>,
    old: &PriceBook,
    (new, days, job): (&PriceBook, &[Prices], &str),
) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let mut items: Vec<&ItemKey> = Vec::new();
    for need in bought.needs {
        if let NeedItem::Item(item) = &need.item
            && !items.contains(&&item.value)
        {
            items.push(&item.value);
        }
    }
    for item in items {
        let unit = |book: &PriceBook| book.items.get(item).map(|item| item.selling.unit);
        if let (Some(was), Some(is)) = (unit(old), unit(new))
            && was != is
        {
            let (was, is) = (was.symbol(), is.symbol());
            found.push(format!(
                "{item} was sold by the {was} and is now by the {is}: told as a rule, not as a price"
            ));
        }
        let ours = new.holds.iter().filter(|hold| {
            let held_for = hold.job.as_deref();
            hold.item == *item && held_for.is_none_or(|held_for| held_for == job)
        });
        // Where several holds follow each other, the last one counts.
        let Some(until) = ours.map(|hold| hold.until).max() else {
            continue;
        };
        let mut pours = days.iter().map(|day| day.day);
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
