//! From a takeoff to the sheet that the office views read.

use std::path::{Path, PathBuf};

use super::Job;
use crate::advice::advice;
use crate::costing::Offer;
use crate::documents::views::office::Sheet;
use crate::input::job;
use crate::outside::desk::{self, Desk, report_by_book};
use crate::outside::files::Files;
use crate::reading::{Problem, Problems, Read, Sources};
use crate::values::Day;

/// Which options the sheet is about.
#[derive(Debug, clap::Args)]
pub(super) struct Chosen {
    /// The job with this option, by its title or the beginning of it; may be given several times
    #[arg(long, value_name = "OPTION")]
    with: Vec<String>,
}

/// A job by one book, or by each of several; there is at least one.
pub(super) struct PricedJob {
    desks: Vec<Desk>,
    offers: Vec<Offer>,
}

impl PricedJob {
    pub(super) fn sheets<'a>(&'a self, sources: &'a Sources) -> Vec<Sheet<'a>> {
        let priced = self.desks.iter().zip(&self.offers);
        priced
            .map(|(desk, offer)| sheet(desk, offer, sources))
            .collect()
    }
}

/// The job of a command on one takeoff, on its desk.
pub(super) fn desk(job: &Job, files: &mut Files) -> Read<Desk> {
    let books: Vec<PathBuf> = job.book.iter().cloned().collect();
    let mut desks = desk::lay_out(&job.file, job.on, &books, files)?;
    files.problems.none()?;
    Ok(desks.remove(0))
}

/// The job with these options, priced.
pub(super) fn priced(job: &Job, chosen: &Chosen, files: &mut Files) -> Read<PricedJob> {
    let books: Vec<PathBuf> = job.book.iter().cloned().collect();
    priced_by(&job.file, job.on, &books, chosen, files)
}

/// The same by each of these books.
pub(super) fn priced_by(
    file: &Path,
    on: Option<Day>,
    books: &[PathBuf],
    chosen: &Chosen,
    files: &mut Files,
) -> Read<PricedJob> {
    let desks = desk::lay_out(file, on, books, files)?;
    files.problems.none()?;
    let offers = offers(&desks, chosen, &mut files.problems)?;
    Ok(PricedJob { desks, offers })
}

/// Every offer, or every problem of all books.
fn offers(desks: &[Desk], chosen: &Chosen, problems: &mut Problems) -> Read<Vec<Offer>> {
    let mut found = Vec::new();
    let mut offers = Vec::new();
    for desk in desks {
        let mut of_book = Problems::default();
        offers.push(desk.offer(&mut of_book));
        found.push((desk.book.place, of_book));
    }
    report_by_book(&found, problems);
    let choice = job::choose(&desks[0].takeoff.options, &chosen.with, problems)?;
    let offers = offers.into_iter();
    offers
        .map(|offer| Ok(offer?.quoted_with(choice.clone())))
        .collect()
}

pub(super) fn sheet<'a>(desk: &'a Desk, offer: &'a Offer, sources: &'a Sources) -> Sheet<'a> {
    Sheet {
        takeoff: desk.takeoff.with(&offer.as_quoted),
        business: &desk.business,
        book: &desk.book,
        quoted: desk.quoted,
        days: &desk.days,
        offer,
        sources,
    }
}

/// What is worth a second look before it goes out.
pub(super) fn advised(sheet: &Sheet<'_>) -> Vec<Problem> {
    advice(sheet.takeoff, sheet.pricing(), sheet.offer, sheet.quoted)
}
