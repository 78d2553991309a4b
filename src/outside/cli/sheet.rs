//! From the desk to the sheet that the office views read, and from a view to the terminal.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{Job, with_desks};
use crate::costing::Offer;
use crate::documents::views::office::Sheet;
use crate::input::job;
use crate::outside::desk::{Desk, report_by_book};
use crate::reading::{Problems, Sources};
use crate::values::Day;

/// Which options the sheet is about.
#[derive(Debug, clap::Args)]
pub(super) struct Chosen {
    /// The job with this option, by its title or the beginning of it; may be given several times
    #[arg(long, value_name = "OPTION")]
    with: Vec<String>,
}

/// Prices the job and prints what `view` makes of it; every problem is shown instead, if there is one.
pub(super) fn with_sheet(
    job: &Job,
    chosen: &Chosen,
    view: impl FnOnce(&Sheet<'_>, &mut Problems) -> Option<String>,
) -> ExitCode {
    let books: Vec<PathBuf> = job.book.iter().cloned().collect();
    with_sheets(&job.file, job.on, &books, chosen, |sheets, problems| {
        super::say(&view(&sheets[0], problems)?);
        Some(ExitCode::SUCCESS)
    })
}

/// Prices the job by each book and hands all sheets to `work`, at least one.
pub(super) fn with_sheets(
    file: &Path,
    on: Option<Day>,
    books: &[PathBuf],
    chosen: &Chosen,
    work: impl FnOnce(&[Sheet<'_>], &mut Problems) -> Option<ExitCode>,
) -> ExitCode {
    with_desks(file, on, books, |desks, sources, problems| {
        let offers = offers(desks, chosen, problems)?;
        let sheets: Vec<Sheet<'_>> = desks
            .iter()
            .zip(&offers)
            .map(|(desk, offer)| sheet(desk, offer, sources))
            .collect();
        work(&sheets, problems)
    })
}

/// Every offer, or every problem of all books.
fn offers(desks: &[Desk], chosen: &Chosen, problems: &mut Problems) -> Option<Vec<Offer>> {
    let mut found = Vec::new();
    let mut offers = Vec::new();
    for desk in desks {
        let mut of_book = Problems::default();
        offers.push(desk.offer(&mut of_book));
        found.push((desk.book.place, of_book));
    }
    report_by_book(&found, problems);
    let offers: Option<Vec<Offer>> = offers.into_iter().collect();
    let choice = job::choose(&desks.first()?.takeoff.options, &chosen.with, problems)?;
    let offers = offers?.into_iter();
    Some(
        offers
            .map(|offer| offer.quoted_with(choice.clone()))
            .collect(),
    )
}

fn sheet<'a>(desk: &'a Desk, offer: &'a Offer, sources: &'a Sources) -> Sheet<'a> {
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
