//! From the desk to the sheet that the office views read, and from a view to the terminal.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::{Job, with_desks};
use crate::costing::{self, Offer};
use crate::documents::views::office::Sheet;
use crate::outside::desk::{Desk, report_by_book};
use crate::reading::{Problems, Sources};
use crate::values::Day;

/// Prices the job and prints what `view` makes of it; every problem is shown instead, if there is one.
pub(super) fn with_sheet(
    job: &Job,
    view: impl FnOnce(&Sheet<'_>, &mut Problems) -> Option<String>,
) -> ExitCode {
    let books: Vec<PathBuf> = job.book.iter().cloned().collect();
    with_sheets(&job.file, job.on, &books, |sheets, problems| {
        super::say(&view(&sheets[0], problems)?);
        Some(ExitCode::SUCCESS)
    })
}

/// Prices the job by each book and hands all sheets to `work`, at least one.
pub(super) fn with_sheets(
    file: &Path,
    on: Option<Day>,
    books: &[PathBuf],
    work: impl FnOnce(&[Sheet<'_>], &mut Problems) -> Option<ExitCode>,
) -> ExitCode {
    with_desks(file, on, books, |desks, sources, problems| {
        let offers = offers(desks, problems)?;
        let sheets: Vec<Sheet<'_>> = desks
            .iter()
            .zip(&offers)
            .map(|(desk, offer)| sheet(desk, offer, sources))
            .collect();
        work(&sheets, problems)
    })
}

/// Every offer, or every problem of all books.
fn offers(desks: &[Desk], problems: &mut Problems) -> Option<Vec<Offer>> {
    let mut found = Vec::new();
    let mut offers = Vec::new();
    for desk in desks {
        let mut of_book = Problems::default();
        offers.push(costing::offer(
            &desk.takeoff,
            &desk.book,
            &desk.business,
            &desk.days,
            &mut of_book,
        ));
        found.push((desk.book.place, of_book));
    }
    report_by_book(&found, problems);
    offers.into_iter().collect()
}

fn sheet<'a>(desk: &'a Desk, offer: &'a Offer, sources: &'a Sources) -> Sheet<'a> {
    Sheet {
        takeoff: &desk.takeoff,
        business: &desk.business,
        book: &desk.book,
        quoted: desk.quoted,
        days: &desk.days,
        offer,
        sources,
    }
}
