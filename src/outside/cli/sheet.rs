//! From the desk to the sheet that the office views read, and from a view to the terminal.

use std::process::ExitCode;

use super::{Job, with_desk};
use crate::costing;
use crate::documents::views::office::Sheet;
use crate::input::job;
use crate::reading::Problems;

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
    with_desk(job, |desk, sources, problems| {
        let offer = costing::offer(
            &desk.takeoff,
            &desk.book,
            &desk.business,
            &desk.days,
            problems,
        )?;
        let choice = job::choose(&desk.takeoff.options, &chosen.with, problems)?;
        let takeoff = desk.takeoff.with(&choice);
        let offer = offer.quoted_with(choice);
        let sheet = Sheet {
            takeoff,
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
