//! `flatwork quote`: the price in the terminal, the quote as a PDF.

use std::path::PathBuf;
use std::process::ExitCode;

use super::paper::print;
use super::{Job, say, with_desk};
use crate::advice::{Case, advice};
use crate::costing;
use crate::documents::offering::{self, Offering};
use crate::documents::{quote_document, views::office};
use crate::outside::desk::photos;
use crate::press::layout::style::Look;
use crate::reading::caret;

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    #[command(flatten)]
    job: Job,
    /// Where the PDF goes; else beside the takeoff
    #[arg(short, long, value_name = "FILE")]
    output: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_desk(&arguments.job, |desk, sources, problems| {
        let offer = costing::offer(
            &desk.takeoff,
            &desk.book,
            &desk.business,
            &desk.days,
            problems,
        )?;
        let found = advice(Case {
            takeoff: &desk.takeoff,
            business: &desk.business,
            book: &desk.book,
            offer: &offer,
            days: &desk.days,
            quoted: desk.quoted,
        });
        let before = problems.len();
        let photos = photos(desk, problems);
        if problems.len() != before {
            return None;
        }
        let of = Offering {
            photos: &photos,
            takeoff: &desk.takeoff,
            business: &desk.business,
            rules: &desk.book.rules,
            offer: &offer,
            quoted: desk.quoted,
            pour: desk.days[desk.takeoff.first_pour()].day,
        };
        let figures = offering::figures(of, Look::default().accent);
        let printed = print(
            quote_document(&offering::view(of), &figures),
            &desk.file,
            arguments.output.as_ref(),
            "pdf",
            problems,
        )?;
        let path = match printed {
            Ok(path) => path,
            Err(status) => return Some(status),
        };
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
        Some(ExitCode::SUCCESS)
    })
}
