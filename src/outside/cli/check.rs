//! `flatwork check`: advice on takeoffs.

use std::path::PathBuf;
use std::process::ExitCode;

use super::{Job, say, with_file};
use crate::advice::advice;
use crate::reading::caret;
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    /// The takeoffs
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// The day of the quote, as 2026-05-04; else the takeoff's `quoted`, else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
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
        let status = with_file(file, &job, |desk, sources, problems| {
            let offer = desk.offer(problems)?;
            let found = advice(&desk.takeoff, desk.pricing(), &offer, desk.quoted);
            for one in &found {
                say(&format!("{}\n", caret::show(one, "advice", sources)));
            }
            let count = found.len();
            say(&format!(
                "{}: {}\n",
                file.display(),
                if count == 0 {
                    "nothing to look at".to_owned()
                } else {
                    format!("{count} to look at; a quote can be made all the same")
                }
            ));
            Some(ExitCode::SUCCESS)
        });
        if status != ExitCode::SUCCESS {
            worst = status;
        }
    }
    worst
}
