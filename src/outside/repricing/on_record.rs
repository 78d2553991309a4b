//! A quote on record: at its own recorded prices, and now.

use std::path::Path;

use super::cache::Cache;
use super::recorded_estimate::RecordedEstimate;
use super::{RepriceQuestion, SentQuote, outcome, priced_as, resolved, takeoff_of, whole};
use crate::costing::outcome::{AskedQuote, Clause, Outcome, Standing};
use crate::input::business::Business;
use crate::input::job::Choice;
use crate::office::escalation::followed;
use crate::office::name::Name;
use crate::office::quote_excerpt::{self, RecordExcerpt};
use crate::office::record::{Happened, InputKind, Record};
use crate::outside::files::{Files, record_folder};
use crate::outside::from_record;
use crate::values::{Day, Money};

/// Asks one quote; none where it was signed and poured already.
pub(super) fn ask(
    folder: &Path,
    quote: &Name,
    signed: Option<&Name>,
    cache: &mut Cache<'_>,
    question: &RepriceQuestion,
) -> Option<Outcome> {
    let found = asked(folder, quote, signed, cache, question);
    found.unwrap_or_else(|because| {
        Some(Outcome::Unpriced {
            number: quote.number.to_string(),
            because,
        })
    })
}

fn asked(
    folder: &Path,
    quote: &Name,
    signed: Option<&Name>,
    cache: &mut Cache<'_>,
    question: &RepriceQuestion,
) -> Result<Option<Outcome>, String> {
    let text = read(folder, quote)?;
    let RecordExcerpt { day, what: kept } =
        RecordExcerpt::at(&text).map_err(|error| unsound(folder, quote, &error))?;
    let pours: Vec<Day> = kept.pours.iter().map(|day| day.0).collect();
    if signed.is_some() && pours.iter().all(|pour| *pour < question.today) {
        return Ok(None);
    }
    let choice = match signed {
        None => kept.as_quoted.clone(),
        Some(name) => chosen(folder, name)?,
    };
    let input = |what| kept.input(what).ok_or("its record has no files");
    let takeoff = input(InputKind::Takeoff)?;
    let (business, book) = (input(InputKind::Business)?, input(InputKind::PriceBook)?);
    let business = cache.business(&business.sha256, || word_for_word(business))?;
    let old_book = cache.book(&book.sha256, || word_for_word(book))?;
    let lines = kept.lines(&choice);
    let lines = lines.map_err(|error| unsound(folder, quote, &error))?;
    let lines = lines.ok_or("its quote has no such choice")?;
    let recorded = RecordedEstimate::of(&lines, pours.len(), &old_book.book)
        .ok_or("its record has a line that this program cannot price")?;
    let case = SentQuote {
        quote: AskedQuote {
            number: quote.number.to_string(),
            customer: kept.customer.to_string(),
            standing: match signed {
                None => Standing::Open,
                Some(_) => Standing::Signed(clause(&business, question.index, &text, &choice)?),
            },
            quoted: day.0,
            good_until: kept.good_until.0,
            notes: Vec::new(),
        },
        old: recorded.bought(),
        old_book: &old_book,
        business: &business,
        job: &kept.job,
        pours: &pours,
        fixed: recorded.fixed(),
        discounts: recorded.discounts(),
    };
    Ok(Some(outcome(case, cache, question, |at| {
        let (name, text) = word_for_word(takeoff)?;
        let takeoff = resolved(takeoff_of(&name, text)?, &name, at.book, &business)?;
        priced_as(&takeoff, &Choice(choice), at)
    })))
}

/// What the customer takes over of a rise, where the contract says so.
fn clause(
    business: &Business,
    index: Option<Money>,
    text: &str,
    choice: &[usize],
) -> Result<Clause, String> {
    let Some(clause) = &business.escalation else {
        return Ok(Clause::None);
    };
    let Some(index) = index else {
        return Ok(Clause::Unknown);
    };
    // Rare, and it takes the whole record: the yards are not among its lines by name.
    let (record, _) = Record::from_text(text).map_err(|error| error.to_string())?;
    let Happened::Quote(quote) = &record.what else {
        return Err("its record is no quote".to_owned());
    };
    let mut files = Files::default();
    let yards = from_record::ordered(quote, record.day.0, choice, &mut files);
    let yards = whole(yards, &files.problems)?;
    let found = followed(clause, index, yards);
    Ok(Clause::Passes(
        found.map_or(Money::ZERO, |found| found.amount),
    ))
}

/// The combination that was signed.
fn chosen(folder: &Path, name: &Name) -> Result<Vec<usize>, String> {
    let record = Record::from_text(&read(folder, name)?);
    match record
        .map_err(|error| unsound(folder, name, &error))?
        .0
        .what
    {
        Happened::Accepted(accepted) => Ok(accepted.choice),
        _ => Err(format!("`{name}.json` is no signature")),
    }
}

fn read(folder: &Path, name: &Name) -> Result<String, String> {
    let file = format!("{name}.json");
    let place = || folder.join(&file).display().to_string();
    let bytes = record_folder::read(folder, &file);
    let bytes = bytes.map_err(|error| format!("cannot read `{}`: {error}", place()))?;
    String::from_utf8(bytes).map_err(|_| format!("`{}` is no text", place()))
}

fn unsound(folder: &Path, name: &Name, error: &dyn std::fmt::Display) -> String {
    let place = folder.join(format!("{name}.json"));
    format!("`{}` is no sound record: {error}", place.display())
}

fn word_for_word(input: &quote_excerpt::InputExcerpt<'_>) -> Result<(String, String), String> {
    let text = input.text().map_err(|error| error.to_string())?;
    Ok((input.name.to_string(), text))
}
