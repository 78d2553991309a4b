//! From the desk to the sheet that the office views read, and from a view to the terminal.

use std::process::ExitCode;

use super::{Job, with_desk};
use crate::costing;
use crate::documents::views::office::Sheet;
use crate::reading::Problems;

/// Prices the job and prints what `view` makes of it; every problem is shown instead, if there is one.
pub(super) fn with_sheet(
    job: &Job,
    view: impl FnOnce(&Sheet<'_>, &mut Problems) -> Option<String>,
) -> ExitCode {
    with_desk(job, |desk, sources, problems| {
        let offer = costing::offer(
            &desk.takeoff,
            &desk.book,
            &desk.business,
            &desk.days,
            problems,
        )?;
        let sheet = Sheet {
            takeoff: &desk.takeoff,
            business: &desk.business,
            book: &desk.book,
            quoted: desk.quoted,
            days: &desk.days,
            offer: &offer,
            sources,
        };
        let text = view(&sheet, problems)?;
        super::say(&text);
        Some(ExitCode::SUCCESS)
    })
}
