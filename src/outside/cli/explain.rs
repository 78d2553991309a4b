//! `flatwork explain`.

use std::process::ExitCode;

use super::{Chosen, Job, with_sheet};
use crate::documents::views::office;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
    #[command(flatten)]
    chosen: Chosen,
    /// A line of the cost by its number, such as 3; or any name: labor, price, total, patio area
    #[arg(required = true)]
    line: Vec<String>,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    let line = arguments.line.join(" ");
    with_sheet(&arguments.job, &arguments.chosen, |sheet, problems| {
        office::explain::text(sheet, &line, problems)
    })
}
