//! `flatwork quote`: the price in the terminal, the quote as a PDF, and its number once it goes out.

use std::path::PathBuf;

use super::Job;
use super::issue::{Plan, issue};
use super::pdf_file::{destination, put};
use super::ran::{Ran, say};
use super::sheet::{advised, desk, sheet};
use crate::documents::views::office;
use crate::outside::files::Files;
use crate::outside::quote_pdf::quote_pdf;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
    /// Where the PDF goes; else beside the takeoff
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
    /// Gives the quote its number and puts it on record
    #[arg(long)]
    issue: bool,
    /// Issues the quote as a revision of this number
    #[arg(long, value_name = "NUMBER")]
    revise: Option<String>,
    /// Issues it even where a quote for this takeoff went out already
    #[arg(long)]
    another: bool,
    /// Says what would be written, and writes nothing
    #[arg(long)]
    dry_run: bool,
}

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let desk = desk(&arguments.job, files)?;
    let offer = desk.offer(&mut files.problems)?;
    let found = advised(&sheet(&desk, &offer, &files.sources));
    let output = arguments.output.as_ref();
    let path = destination(&desk.file, output, "pdf", &mut files.problems)?;
    let (pdf, filed) = if arguments.issue || arguments.revise.is_some() {
        let plan = Plan {
            revise: arguments.revise.as_deref(),
            tell: false,
            another: arguments.another,
            dry_run: arguments.dry_run,
        };
        let issued = issue(&desk, &offer, &plan, files)?;
        (issued.pdf, issued.said)
    } else {
        let made = quote_pdf(&desk, &offer, None, None, &mut files.problems)?;
        (made.pdf, String::new())
    };
    if !arguments.dry_run {
        // It is on record even where the disk refuses the copy.
        put(&path, &pdf).inspect_err(|_| say(&filed))?;
    }
    let advices = office::advice::told(&found, &files.sources);
    let summary = office::summary(desk.quoted, &desk.takeoff, &desk.business, &offer, &found);
    let quote = format!("quote       {}\n", path.display());
    let dry_run = if arguments.dry_run {
        "nothing was written (--dry-run)\n"
    } else {
        ""
    };
    Ok(advices + &summary + &quote + &filed + dry_run)
}
