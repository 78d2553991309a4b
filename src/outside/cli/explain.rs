//! `flatwork explain`.

use super::Job;
use super::ran::Ran;
use super::sheet::{Chosen, priced};
use crate::documents::views::office;
use crate::outside::files::Files;

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

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let line = arguments.line.join(" ");
    let priced = priced(&arguments.job, &arguments.chosen, files)?;
    let sheet = &priced.sheets(&files.sources)[0];
    Ok(office::explain::text(sheet, &line, &mut files.problems)?)
}
