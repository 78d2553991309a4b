//! A job laid out again from the files that the record of its quote keeps, word for word.

use rust_decimal::Decimal;

use super::desk::{self, Desk};
use super::files::Files;
use crate::input::business::{self, Business};
use crate::input::job::Choice;
use crate::office::account::Account;
use crate::office::record::{Input, InputKind, Quote};
use crate::reading::{Problem, Read};
use crate::values::Day;

/// The job laid out again from the texts of its quote.
pub fn desk(quote: &Quote, day: Day, files: &mut Files) -> Read<Desk> {
    let book = kept(quote, InputKind::PriceBook, files)?;
    desk_by(book, quote, day, files)
}

/// The same by another book.
pub fn desk_by(book: &Input, quote: &Quote, day: Day, files: &mut Files) -> Read<Desk> {
    let takeoff = kept(quote, InputKind::Takeoff, files)?;
    let business = kept(quote, InputKind::Business, files)?;
    desk::lay_out_again([takeoff, business, book], day, files)
}

fn kept<'a>(quote: &'a Quote, what: InputKind, files: &mut Files) -> Read<&'a Input> {
    quote.input(what).ok_or_else(|| files.refuse(no_files()))
}

/// A record without the files it was made from.
pub fn no_files() -> Problem {
    Problem::new("bad-record", "its record has no files")
        .help("bring it back from a copy; `flatwork verify` looks at all of them")
}

/// The cubic yards of concrete ordered in a quote with this choice.
pub fn ordered(quote: &Quote, day: Day, choice: &[usize], files: &mut Files) -> Read<Decimal> {
    let desk = desk(quote, day, files)?;
    let offer = desk.offer(&mut files.problems)?;
    let signed = offer.by_choice.get(&Choice(choice.to_vec()));
    let signed = signed.ok_or_else(|| {
        let message = "this quote was not priced with this choice";
        files.refuse(Problem::new("no-such-option", message))
    })?;
    let orders = signed.needs.orders.iter();
    Ok(orders.map(|order| order.order.value()).sum())
}

/// The business as it was when the quote went out: its terms are the ones that were signed.
pub fn business(account: &Account<'_>) -> Option<Business> {
    let (_, quote) = account.quote()?;
    // What could be read when the quote went out can be read now.
    let mut unheard = Files::default();
    let id = unheard.kept(quote.input(InputKind::Business)?);
    unheard.read(id, business::read).ok()
}
