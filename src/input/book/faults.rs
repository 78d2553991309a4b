//! What is worth a second look in a book that can be read.

use super::diff::listed;
use super::uses::uses;
use super::{ItemKey, PriceBook};
use crate::values::Day;

/// After so many days without a new price, somebody should ask. Common practice, no source.
pub const OLD: i64 = 365;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// No price has begun by this day.
    NoPrice(ItemKey),
    /// The newest price is nothing, and so would the line be.
    Free(ItemKey),
    /// The newest price that has begun is older than [`OLD`] days.
    Old(ItemKey, Day),
    /// No rule of the book buys it; only a takeoff that names it does.
    Unused(ItemKey),
    /// The whole book is promised no longer.
    BookPast(Day),
    HoldPast(ItemKey, Day),
    /// Two holds of one item for one job cover the same day; the later in the book counts.
    HoldsOverlap(ItemKey, Day),
}

/// Every fault, in the order of the book.
pub fn faults(book: &PriceBook, day: Day) -> Vec<Fault> {
    let mut found = Vec::new();
    if let Some(until) = book.good_until.as_ref().filter(|until| until.value < day) {
        found.push(Fault::BookPast(until.value));
    }
    let uses = uses(&book.rules);
    let named: Vec<&str> = uses.iter().map(|one| one.key).collect();
    for (key, item) in book.items.iter() {
        let newest = item.dated.iter().rev().find(|dated| dated.from <= day);
        match (listed(&item.dated, day), newest) {
            (Some(price), _) if price.dollars().is_zero() => found.push(Fault::Free(key.clone())),
            (Some(_), Some(dated)) if OLD < day.days_since(dated.from) => {
                found.push(Fault::Old(key.clone(), dated.from));
            }
            (Some(_), _) => {}
            (None, _) => found.push(Fault::NoPrice(key.clone())),
        }
        if !named.contains(&key.as_str()) {
            found.push(Fault::Unused(key.clone()));
        }
    }
    for (i, hold) in book.holds.iter().enumerate() {
        if hold.until < day {
            found.push(Fault::HoldPast(hold.item.value.clone(), hold.until));
        }
        for other in &book.holds[..i] {
            let same = other.item.value == hold.item.value && other.job == hold.job;
            let begun = hold.from.max(other.from);
            let until = hold.until.min(other.until);
            if same && begun.is_none_or(|from| from <= until) {
                found.push(Fault::HoldsOverlap(hold.item.value.clone(), until));
            }
        }
    }
    found
}
