//! A takeoff that no quote went out for: as it was priced on its day, and now.

use std::path::Path;

use super::cache::{Cache, on_disk};
use super::{RepriceQuestion, SentQuote, outcome, priced_as, resolved, takeoff_of};
use crate::costing::outcome::{AskedQuote, Outcome, Standing};
use crate::costing::{Prices, Pricing, prices};
use crate::input::job::Choice;
use crate::outside::{desk, files};

/// Asks one takeoff.
pub(super) fn ask(file: &Path, cache: &mut Cache<'_>, question: &RepriceQuestion) -> Outcome {
    let number = file.file_stem().unwrap_or_default().to_string_lossy();
    asked(file, &number, cache, question).unwrap_or_else(|because| Outcome::Unpriced {
        number: number.into_owned(),
        because,
    })
}

fn asked(
    file: &Path,
    number: &str,
    cache: &mut Cache<'_>,
    question: &RepriceQuestion,
) -> Result<Outcome, String> {
    let (name, text) = on_disk(file)?;
    let written = takeoff_of(&name, text)?;
    let home = files::business_file(file)
        .ok_or("no `business.yaml` beside it or in any folder above it")?;
    let (business, old_book) = cache.home(&home)?;
    let takeoff = resolved(written.clone(), &name, &old_book.book, &business)?;
    let quoted = takeoff
        .head
        .quoted
        .or(question.on)
        .unwrap_or(question.today);
    let pours = desk::pours(&takeoff, quoted, &business);
    // What the owner saw on the day of the quote, though poured later.
    let seen = prices(&old_book.book, quoted, &takeoff.name);
    let seen: Vec<Prices> = pours.iter().map(|day| seen.on(*day)).collect();
    let choice = Choice::as_quoted(&takeoff.options);
    let at = Pricing {
        book: &old_book.book,
        business: &business,
        days: &seen,
    };
    let old = priced_as(&takeoff, &choice, at)?;
    let case = SentQuote {
        quote: AskedQuote {
            number: number.to_owned(),
            customer: takeoff.customer.name.clone(),
            standing: Standing::Open,
            quoted,
            good_until: quoted.plus(i64::from(business.quote.good_for.0)),
            notes: Vec::new(),
        },
        old: old.bought(),
        old_book: &old_book,
        business: &business,
        job: &takeoff.name,
        pours: &pours,
        fixed: takeoff.head.fixed_price.as_ref().map(|price| price.value),
        discounts: takeoff.head.discounts.clone(),
    };
    Ok(outcome(case, cache, question, |at| {
        let takeoff = resolved(written, &name, at.book, &business)?;
        priced_as(&takeoff, &choice, at)
    }))
}
