//! Do the prices held for this job help it?

use super::Case;
use crate::costing::Prices;
use crate::input::book::{Basis, Hold};
use crate::reading::Problem;
use crate::trade::order::NeedItem;

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let ours = case.book.holds.iter().filter(|hold| {
        let named = hold.job.as_deref() == Some(case.takeoff.name.as_str());
        // A hold for any job that had already ended is history.
        named || hold.job.is_none() && case.quoted <= hold.until
    });
    ours.filter_map(|hold| {
        let used = used_on(case, hold);
        dear(case, hold, &used).or_else(|| short(hold, &used))
    })
    .collect()
}

/// The days on which this job buys the item.
fn used_on<'a>(case: Case<'a>, hold: &Hold) -> Vec<&'a Prices> {
    let needs = &case.offer.quoted().needs.needs;
    let buys = needs
        .iter()
        .filter(|need| matches!(&need.item, NeedItem::Item(key) if key.value == hold.item.value));
    let last = case.days.len().saturating_sub(1);
    buys.filter_map(|need| case.days.get(need.placement.unwrap_or(0).min(last)))
        .collect()
}

/// A held price is taken even when the list is lower.
fn dear(case: Case<'_>, hold: &Hold, used: &[&Prices]) -> Option<Problem> {
    used.iter().find_map(|prices| {
        let held = prices.get(&hold.item.value).filter(|dated| {
            dated.place == hold.item.place && matches!(dated.basis, Basis::Held { .. })
        })?;
        let item = case.book.items.get(&hold.item.value)?;
        let listed = item
            .dated
            .iter()
            .rev()
            .find(|dated| dated.from <= prices.day)?;
        (listed.price.dollars() < held.price.dollars()).then(|| {
            let message = format!(
                "`{}` is held at {}, and the list of {} says `{}`",
                hold.item.value, held.price, prices.day, listed.price
            );
            Problem::new("dear-hold", message)
                .at(hold.item.place)
                .also(listed.place, "the price of the list")
                .help("the held price is taken; take the hold out if you may buy at the list")
        })
    })
}

fn short(hold: &Hold, used: &[&Prices]) -> Option<Problem> {
    let late = used.iter().find(|prices| hold.until < prices.day)?;
    let message = format!(
        "`{}` is held until `{}`, and you need it on {}",
        hold.item.value, hold.until, late.day
    );
    let problem = Problem::new("hold-ends-early", message).at(hold.item.place);
    Some(problem.help("it is priced from the list; ask for a longer hold, or pour earlier"))
}
