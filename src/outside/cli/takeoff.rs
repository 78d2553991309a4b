//! `flatwork takeoff`.

use std::process::ExitCode;

use super::{Chosen, Format, Job, with_sheet};
use crate::documents::views::office;
use crate::outside::exports;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
    #[command(flatten)]
    chosen: Chosen,
    /// Adds how each quantity came about, and where its figures were written
    #[arg(long)]
    explain: bool,
    /// Text to read, or JSON or CSV for other programs; these always explain
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_sheet(&arguments.job, &arguments.chosen, |sheet, _| {
        Some(match arguments.format {
            Format::Text => office::takeoff::text(sheet, arguments.explain),
            Format::Json => exports::takeoff::json(sheet),
            Format::Csv => exports::takeoff::csv(sheet),
        })
    })
}
