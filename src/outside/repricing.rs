//! Quotes found on record or in takeoffs, each laid out twice: as quoted, and at other prices.

use std::path::{Path, PathBuf};

use super::cabinet;
use super::desk::{self, Desk};
use super::files::records;
use crate::costing::repricing::{Repriced, Side, WhatIf, repriced, supposed};
use crate::costing::{self, prices};
use crate::documents::views::office::reprice::{Outcome, Quote, Standing};
use crate::input::book::ItemKey;
use crate::input::job::Choice;
use crate::office::name::{Event, Name};
use crate::office::record::What;
use crate::reading::{Problem, Problems, Sources};
use crate::trade::order::NeedItem;
use crate::values::Day;

/// What is asked of every quote.
#[derive(Debug)]
pub struct Question {
    /// The day it is asked.
    pub today: Day,
    /// Whether the owner said that day.
    pub on: Option<Day>,
    pub what_ifs: Vec<WhatIf>,
    pub rooms: Vec<ItemKey>,
}

/// Where a quote lies.
#[derive(Clone, Debug)]
pub enum Found {
    Takeoff {
        file: PathBuf,
        book: Option<PathBuf>,
    },
    /// The records that matter of one job in this folder.
    Job { folder: PathBuf, names: Vec<Name> },
}

/// The jobs on record whose names do not say that they are over.
pub fn open_jobs(folder: &Path, problems: &mut Problems) -> Vec<Found> {
    let jobs = cabinet::names(folder, problems).into_values();
    let open = jobs.filter(|names| {
        let has = |event| names.iter().any(|name| name.event == event);
        let signed = has(Event::Accepted);
        // A no after the signature is to a change order.
        !has(Event::Withdrawn) && !has(Event::Cancelled) && (signed || !has(Event::Declined))
    });
    open.map(|mut names| {
        let quote = names
            .iter()
            .rfind(|name| name.event == Event::Quote)
            .cloned();
        names.retain(|name| name.event == Event::Accepted || Some(name) == quote.as_ref());
        Found::Job {
            folder: folder.to_path_buf(),
            names,
        }
    })
    .collect()
}

/// The takeoffs in a folder.
pub fn takeoffs(folder: &Path) -> Vec<PathBuf> {
    let names = records::names(folder).unwrap_or_default().into_iter();
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

/// Asks every quote, on all cores; the answers come in the order of what was found.
pub fn ask(found: &[Found], book: &(String, String), question: &Question) -> Vec<Outcome> {
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let share = found.len().div_ceil(cores).max(1);
    std::thread::scope(|scope| {
        let threads: Vec<_> = found
            .chunks(share)
            .map(|chunk| scope.spawn(move || one_share(chunk, book, question)))
            .collect();
        threads
            .into_iter()
            .flat_map(|thread| thread.join().expect("a share of the quotes does not panic"))
            .collect()
    })
}

fn one_share(chunk: &[Found], book: &(String, String), question: &Question) -> Vec<Outcome> {
    chunk
        .iter()
        .filter_map(|found| match found {
            Found::Takeoff { file, book } => takeoff(file, book.as_deref(), question),
            Found::Job { folder, names } => job(folder, names, book, question),
        })
        .collect()
}

fn takeoff(file: &Path, book: Option<&Path>, question: &Question) -> Option<Outcome> {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let mut both = |on: Option<Day>| {
        let old = desk::lay_out(file, on, None, &mut sources, &mut problems)?;
        let new = desk::lay_out(file, on, book, &mut sources, &mut problems)?;
        Some((old, new))
    };
    let laid = both(None).and_then(|(old, new)| match old.takeoff.quoted {
        Some(_) => Some((old, new)),
        None => both(question.on),
    });
    let number = file.file_stem()?.to_string_lossy().into_owned();
    let Some((mut old, new)) = laid else {
        return Some(Outcome::Unpriced {
            number,
            because: first(&problems),
        });
    };
    // What the owner saw on the day of the quote, though poured later.
    for day in &mut old.days {
        let poured = day.day;
        *day = prices(&old.book, old.quoted, &old.takeoff.name);
        day.day = poured;
    }
    let quote = Quote {
        number,
        customer: old.takeoff.customer.name.clone(),
        standing: Standing::Open,
        quoted: old.quoted,
        good_until: old.quoted.plus(i64::from(old.business.quote.good_for.0)),
        notes: Vec::new(),
    };
    Some(outcome(quote, &old, new, None, question))
}

fn job(
    folder: &Path,
    names: &[Name],
    book: &(String, String),
    question: &Question,
) -> Option<Outcome> {
    let mut problems = Problems::default();
    let number = names.first()?.number.to_string();
    let row = cabinet::row(folder, names, &mut problems);
    let unpriced = |problems: &Problems| Outcome::Unpriced {
        number: number.clone(),
        because: first(problems),
    };
    if !problems.is_empty() {
        return Some(unpriced(&problems));
    }
    let (day, kept) = row
        .records
        .iter()
        .rev()
        .find_map(|record| match &record.what {
            What::Quote(quote) => Some((record.day.0, quote)),
            _ => None,
        })?;
    let accepted = row.records.iter().find_map(|record| match &record.what {
        What::Accepted(accepted) => Some(accepted),
        _ => None,
    });
    let poured = kept.pours.iter().all(|pour| pour.0 < question.today);
    if poured && accepted.is_some() {
        return None;
    }
    let [takeoff, business, old_book, ..] = &kept.inputs[..] else {
        return None;
    };
    let text = |input: &'_ crate::office::record::Input| (input.name.clone(), input.text.clone());
    let [takeoff, business, old_book] = [takeoff, business, old_book].map(text);
    let lay = |book: &(String, String), problems: &mut Problems| {
        let texts = [&takeoff, &business, book].map(|(name, text)| (name.as_str(), text.as_str()));
        desk::lay_out_again(texts, day, &mut Sources::default(), problems)
    };
    let (old, new) = (lay(&old_book, &mut problems), lay(book, &mut problems));
    let (Some(old), Some(new)) = (old, new) else {
        return Some(unpriced(&problems));
    };
    let choice = accepted.map_or(&kept.as_quoted, |accepted| &accepted.choice);
    let quote = Quote {
        number,
        customer: kept.customer.clone(),
        standing: if accepted.is_some() {
            Standing::Signed
        } else {
            Standing::Open
        },
        quoted: day,
        good_until: kept.good_until.0,
        notes: Vec::new(),
    };
    let choice = Choice(choice.clone());
    Some(outcome(quote, &old, new, Some(&choice), question))
}

fn outcome(
    mut quote: Quote,
    old: &Desk,
    mut new: Desk,
    choice: Option<&Choice>,
    question: &Question,
) -> Outcome {
    new.days = supposed(&new.days, &question.what_ifs);
    let mut problems = Problems::default();
    let mut offer = |desk: &Desk| {
        let (takeoff, book) = (&desk.takeoff, &desk.book);
        let offer = costing::offer(takeoff, book, &desk.business, &desk.days, &mut problems)?;
        Some(match choice {
            Some(choice) => offer.quoted_with(choice.clone()),
            None => offer,
        })
    };
    let (Some(before), Some(after)) = (offer(old), offer(&new)) else {
        return Outcome::Unpriced {
            number: quote.number,
            because: first(&problems),
        };
    };
    let found: Repriced = repriced(
        Side {
            priced: before.quoted(),
            book: &old.book,
            days: &old.days,
        },
        Side {
            priced: after.quoted(),
            book: &new.book,
            days: &new.days,
        },
        &old.business.price,
        old.takeoff.fixed_price.as_ref(),
        &question.rooms,
    );
    quote.notes = notes(&quote, old, &new, &before);
    let floor = old.business.price.margin_floor.value;
    Outcome::Priced(Box::new((quote, floor, found)))
}

/// What has to be said beside the figures: holds that end too early, units that changed.
fn notes(quote: &Quote, old: &Desk, new: &Desk, before: &costing::Offer) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let mut items: Vec<&ItemKey> = Vec::new();
    for need in &before.quoted().needs.needs {
        if let NeedItem::Item(item) = &need.item
            && !items.contains(&&item.value)
        {
            items.push(&item.value);
        }
    }
    for item in items {
        let unit = |desk: &Desk| desk.book.items.get(item).map(|item| item.selling.unit);
        if let (Some(was), Some(is)) = (unit(old), unit(new))
            && was != is
        {
            let (was, is) = (was.symbol(), is.symbol());
            found.push(format!(
                "{item} was sold by the {was} and is now by the {is}: told as a rule, not as a price"
            ));
        }
        let ours = new.book.holds.iter().filter(|hold| {
            let job = hold.job.as_deref();
            hold.item == *item && job.is_none_or(|job| job == new.takeoff.name)
        });
        // Where several holds follow each other, the last one counts.
        let Some(until) = ours.map(|hold| hold.until).max() else {
            continue;
        };
        if let Some(pour) = new
            .days
            .iter()
            .map(|day| day.day)
            .find(|pour| until < *pour)
        {
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

fn first(problems: &Problems) -> String {
    let message = |problem: &Problem| problem.message.clone();
    problems
        .iter()
        .next()
        .map_or_else(|| "its files could not be read".to_owned(), message)
}
