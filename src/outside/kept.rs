//! A quote's own files, word for word as its record keeps them.

use super::desk::{self, Desk};
use super::home;
use crate::input::business::Business;
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
    let [takeoff, business, book, ..] = &quote.inputs[..] else {
        return None;
    };
    let texts = [takeoff, business, book].map(|input| (input.name.as_str(), input.text.as_str()));
    desk::lay_out_again(texts, day, sources, problems)
}

/// The business as it was when the quote went out: its terms are the ones that were signed.
pub fn business(account: &Account<'_>) -> Option<Business> {
    let (_, quote) = account.quote()?;
    let mut inputs = quote.inputs.iter();
    let kept = inputs.find(|input| input.what == "business")?;
    // What could be read when the quote went out can be read now.
    home::kept(kept, &mut Problems::default())
}
