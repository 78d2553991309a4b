//! `flatwork takeoff`.

use super::ran::Ran;
use super::sheet::{Chosen, priced};
use super::{Format, Job};
use crate::documents::views::office;
use crate::outside::exports;
use crate::outside::files::Files;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
    #[command(flatten)]
    chosen: Chosen,
    /// Adds how each quantity came about, and where its figures were written
    #[arg(long)]
    explain: bool,
    /// Lists instead what a rule under `also` of the price book can go by
    #[arg(long, conflicts_with_all = ["explain", "format"])]
    names: bool,
    /// Text to read, or JSON or CSV for other programs; these always explain
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let priced = priced(&arguments.job, &arguments.chosen, files)?;
    let sheet = &priced.sheets(&files.sources)[0];
    if arguments.names {
        return Ok(office::names::text(sheet));
    }
    Ok(match arguments.format {
        Format::Text => office::takeoff::text(sheet, arguments.explain),
        Format::Json => exports::takeoff::json(sheet),
        Format::Csv => exports::takeoff::csv(sheet),
    })
}
