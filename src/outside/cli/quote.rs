//! `flatwork quote`: the price in the terminal, the quote as a PDF, and its number once it goes out.

use std::path::PathBuf;
use std::process::ExitCode;

use super::{Job, issue, pdf_file, say, with_desk};
use crate::advice::{Case, advice};
use crate::documents::views::office;
use crate::outside::quote_pdf;
use crate::reading::caret;

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

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_desk(&arguments.job, |desk, sources, problems| {
        let offer = desk.offer(problems)?;
        let found = advice(Case {
            takeoff: &desk.takeoff,
            business: &desk.business,
            book: &desk.book,
            offer: &offer,
            days: &desk.days,
            quoted: desk.quoted,
        });
        let path = pdf_file::destination(&desk.file, arguments.output.as_ref(), "pdf", problems)?;
        let plan = issue::Plan {
            revise: arguments.revise.as_deref(),
            tell: false,
            another: arguments.another,
            dry_run: arguments.dry_run,
        };
        let (pdf, filed) = if arguments.issue || arguments.revise.is_some() {
            let issued = issue::issue(desk, &offer, &plan, sources, problems)?;
            (issued.pdf, issued.said)
        } else {
            (
                quote_pdf::quote(desk, &offer, None, None, problems)?.pdf,
                String::new(),
            )
        };
        if !arguments.dry_run
            && let Err(status) = pdf_file::put(&path, &pdf)
        {
            say(&filed);
            return Some(status);
        }
        for one in &found {
            say(&format!("{}\n", caret::show(one, "advice", sources)));
        }
        say(&office::summary(
            desk.quoted,
            &desk.takeoff,
            &desk.business,
            &offer,
            found.len(),
        ));
        say(&format!("quote       {}\n", path.display()));
        say(&filed);
        if arguments.dry_run {
            say("nothing was written (--dry-run)\n");
        }
        Some(ExitCode::SUCCESS)
    })
}
