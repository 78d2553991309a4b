//! Quotes found on record or in takeoffs, each held against other prices.
//!
//! What was quoted is read from its record. What it costs now is the same needs at other
//! prices, as long as the other book sells alike; else the job is laid out by that book.

mod cache;
mod notes;
mod on_record;
mod recorded_estimate;
mod written;

use std::path::{Path, PathBuf};
use std::sync::Arc;

pub use cache::NewBook;

use self::cache::Cache;
use super::desk::stem;
use super::files::{Files, record_folder};
use super::records;
use crate::costing::outcome::{AskedQuote, Outcome, Outcomes};
use crate::costing::repricing::{WhatIf, repriced};
use crate::costing::{self, Bought, PriceSaid, Priced, Pricing, estimate, priced};
use crate::input::book::{ItemKey, PriceBook};
use crate::input::business::{Business, Buying};
use crate::input::job::{self, Choice, Discount, JobWritten, Takeoff};
use crate::office::name::Name;
use crate::office::record::Event;
use crate::reading::{At, Problems, Read};
use crate::values::{Day, Money};

/// What is asked of every quote.
#[derive(Debug)]
pub struct RepriceQuestion {
    /// The day it is asked.
    pub today: Day,
    /// Whether the owner said that day.
    pub on: Option<Day>,
    pub what_ifs: Vec<WhatIf>,
    pub rooms: Vec<ItemKey>,
    /// The published price that escalation clauses follow, where the owner says it.
    pub index: Option<Money>,
    /// Whether each quote has to tell its own causes.
    pub each: bool,
}

/// Where a quote lies.
#[derive(Clone, Debug)]
pub enum FoundQuote {
    Takeoff(PathBuf),
    /// A job on record: the quote that counts, and whether it was signed.
    Job {
        folder: Arc<Path>,
        quote: Name,
        signed: Option<Name>,
    },
}

/// The jobs on record whose names do not say that they are over.
pub fn open_jobs(folder: &Path, problems: &mut Problems) -> Vec<FoundQuote> {
    let jobs = records::names(folder, problems).into_values();
    let folder: Arc<Path> = folder.into();
    jobs.filter_map(|names| {
        let last = |event| names.iter().rfind(|name| name.event == event);
        let signed = last(Event::Accepted);
        // A no after the signature is to a change order.
        let refused = signed.is_none() && last(Event::Declined).is_some();
        let over = last(Event::Withdrawn).or(last(Event::Cancelled)).is_some();
        // Billed for good, unless an invoice was taken back since.
        let billed = last(Event::FinalInvoice)
            .is_some_and(|bill| last(Event::Voided).is_none_or(|void| void.place < bill.place));
        (!over && !refused && !billed).then_some(FoundQuote::Job {
            folder: Arc::clone(&folder),
            quote: last(Event::Quote)?.clone(),
            signed: signed.cloned(),
        })
    })
    .collect()
}

/// The takeoffs in a folder.
pub fn takeoffs(folder: &Path) -> Vec<PathBuf> {
    let names = record_folder::names(folder).unwrap_or_default().into_iter();
    let mut found: Vec<PathBuf> = names
        .filter(|name| {
            name.strip_suffix(".yaml")
                .is_some_and(|stem| stem != "business")
        })
        .map(|name| folder.join(name))
        .collect();
    found.sort();
    found
}

/// Asks every quote, on all cores; `done` hears of each.
pub fn ask(
    found: &[FoundQuote],
    other: &NewBook,
    question: &RepriceQuestion,
    done: &(impl Fn() + Sync),
) -> Outcomes {
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let share = found.len().div_ceil(cores).max(1);
    let one_share = |chunk: &[FoundQuote]| {
        let (mut cache, mut answer) = (Cache::new(other, &question.what_ifs), Outcomes::default());
        for found in chunk {
            let outcome = match found {
                FoundQuote::Takeoff(file) => Some(written::ask(file, &mut cache, question)),
                FoundQuote::Job {
                    folder,
                    quote,
                    signed,
                } => on_record::ask(folder, quote, signed.as_ref(), &mut cache, question),
            };
            if let Some(outcome) = outcome {
                answer.add(outcome, question.each);
            }
            done();
        }
        answer
    };
    std::thread::scope(|scope| {
        let threads: Vec<_> = found
            .chunks(share)
            .map(|chunk| scope.spawn(|| one_share(chunk)))
            .collect();
        let mut whole = Outcomes::default();
        for thread in threads {
            whole.join(thread.join().expect("a share of the quotes does not panic"));
        }
        whole
    })
}

/// A quote as it went out, and what it was made from.
struct SentQuote<'a> {
    quote: AskedQuote,
    old: Bought<'a>,
    old_book: &'a cache::QuotedBook,
    business: &'a Business,
    job: &'a str,
    pours: &'a [Day],
    /// The price, where it was fixed by the owner.
    fixed: Option<Money>,
    /// What was taken off.
    discounts: Vec<Discount>,
}

/// Holds the quote against the other prices; `again` is the job laid out by the other book.
fn outcome(
    case: SentQuote<'_>,
    cache: &mut Cache<'_>,
    question: &RepriceQuestion,
    again: impl FnOnce(Pricing<'_>) -> Result<Priced, String>,
) -> Outcome {
    let days = cache.days(case.pours, case.job);
    let at = Pricing {
        book: &cache.other().book,
        business: case.business,
        days: &days,
    };
    let policy = &case.business.price;
    let fixed = case.fixed.map(|value| At {
        value,
        place: policy.round_up_to.place,
    });
    let said = PriceSaid {
        fixed: fixed.as_ref(),
        discounts: &case.discounts,
    };
    let unpriced = |because| Outcome::Unpriced {
        number: case.quote.number.clone(),
        because,
    };
    let (priced_again, lines_again);
    // What is bought the cheapest way may be bought another way at other prices.
    let buys_alike = case.old_book.sells_alike && case.business.order.buy == Buying::AsNeeded;
    let new = if buys_alike {
        let mut problems = Problems::default();
        let (needs, first_pour) = (case.old.needs, case.old.first_pour);
        let lines = priced(needs, first_pour, at, &mut problems);
        let lines = match whole(Ok(lines), &problems) {
            Ok(lines) => lines,
            Err(because) => return unpriced(because),
        };
        lines_again = estimate(lines, policy, said);
        Bought {
            lines: &lines_again,
            ..case.old
        }
    } else {
        match again(at) {
            Ok(priced) => priced_again = priced,
            Err(because) => return unpriced(because),
        }
        priced_again.bought()
    };
    let found = repriced(case.old, new, at, said, &question.rooms);
    let mut quote = case.quote;
    quote.notes = notes::notes(
        &quote,
        case.old,
        &case.old_book.book,
        at,
        case.job,
        question.today,
    );
    quote.notes.extend(notes::crossed(&found.why));
    Outcome::Priced(Box::new((quote, policy.margin_floor.value, found)))
}

/// Reads a takeoff; the places in it are good for nothing else.
fn takeoff_of(name: &str, text: String) -> Result<JobWritten, String> {
    let mut files = Files::default();
    let id = files.sources.add(name, text);
    let written = files.read(id, job::read);
    whole(written, &files.problems)
}

/// Looks its names up in this book.
fn resolved(
    written: JobWritten,
    file: &str,
    book: &PriceBook,
    business: &Business,
) -> Result<Takeoff, String> {
    let mut problems = Problems::default();
    let name = stem(Path::new(file));
    let takeoff = job::resolve(written, &name, book, business, &mut problems);
    whole(takeoff, &problems)
}

/// The job with this choice, at these prices.
fn priced_as(takeoff: &Takeoff, choice: &Choice, at: Pricing<'_>) -> Result<Priced, String> {
    let mut problems = Problems::default();
    let priced = costing::with_choice(takeoff, choice, at, &mut problems);
    whole(priced, &problems)
}

/// What was read, if nothing is wrong with it; else the first problem, for one line of an answer.
fn whole<T>(read: Read<T>, problems: &Problems) -> Result<T, String> {
    match problems.iter().next() {
        Some(problem) => Err(problem.message.clone()),
        None => read.map_err(|_| "its files could not be read".to_owned()),
    }
}
