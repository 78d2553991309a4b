//! `flatwork check`: advice on takeoffs.

use std::path::PathBuf;
use std::process::ExitCode;

use super::Job;
use super::ran::{Ran, ran};
use super::sheet::{advised, desk, sheet};
use crate::documents::views::office;
use crate::outside::files::Files;
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    /// The takeoffs
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// The day of the quote, as 2026-05-04; else the takeoff's `quoted`, else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    on: Option<Day>,
    /// Another price book than the usual one
    #[arg(long, value_name = "FILE")]
    book: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    let mut worst = ExitCode::SUCCESS;
    for file in &arguments.files {
        let job = Job {
            file: file.clone(),
            on: arguments.on,
            book: arguments.book.clone(),
        };
        let status = ran(|files| checked(&job, files));
        if status != ExitCode::SUCCESS {
            worst = status;
        }
    }
    worst
}

fn checked(job: &Job, files: &mut Files) -> Ran {
    let desk = desk(job, files)?;
    let offer = desk.offer(&mut files.problems)?;
    let found = advised(&sheet(&desk, &offer, &files.sources));
    Ok(office::advice::checked(&job.file, &found, &files.sources))
}
