//! `flatwork cost`.

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
    /// Text to read, or JSON for other programs
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_sheet(&arguments.job, &arguments.chosen, |sheet, _| {
        Some(match arguments.format {
            Format::Text => office::cost::text(sheet),
            Format::Json => exports::cost::json(sheet),
        })
    })
}
