//! A quote's own files, word for word as its record keeps them.

use rust_decimal::Decimal;

use super::business_folder;
use super::desk::{self, Desk};
use crate::input::business::Business;
use crate::input::job::Choice;
use crate::office::account::Account;
use crate::office::record::Quote;
use crate::reading::{Problems, Sources};
use crate::values::Day;

/// The job laid out again from the texts of its quote.
pub fn desk(
    quote: &Quote,
    day: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let book = quote.inputs.get(2)?;
    desk_by((&book.name, &book.text), quote, day, sources, problems)
}

/// The same by another book, of this name and text.
pub fn desk_by(
    book: (&str, &str),
    quote: &Quote,
    day: Day,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Desk> {
    let [takeoff, business, ..] = &quote.inputs[..] else {
        return None;
    };
    let [takeoff, business] = [takeoff, business].map(|one| (one.name.as_str(), one.text.as_str()));
    desk::lay_out_again([takeoff, business, book], day, sources, problems)
}

/// The cubic yards of concrete ordered in a quote with this choice.
pub fn ordered(
    quote: &Quote,
    day: Day,
    choice: &[usize],
    problems: &mut Problems,
) -> Option<Decimal> {
    let desk = desk(quote, day, &mut Sources::default(), problems)?;
    let offer = desk.offer(problems)?;
    let signed = offer.by_choice.get(&Choice(choice.to_vec()))?;
    let orders = signed.needs.orders.iter();
    Some(orders.map(|order| order.order.value()).sum())
}

/// The business as it was when the quote went out: its terms are the ones that were signed.
pub fn business(account: &Account<'_>) -> Option<Business> {
    let (_, quote) = account.quote()?;
    let mut inputs = quote.inputs.iter();
    let kept = inputs.find(|input| input.what == "business")?;
    // What could be read when the quote went out can be read now.
    business_folder::kept(kept, &mut Problems::default())
}
