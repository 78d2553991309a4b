//! `flatwork quote`: the price in the terminal, the quote as a PDF.

use std::path::PathBuf;
use std::process::ExitCode;

use super::{COULD_NOT_RUN, Job, say, with_desk};
use crate::advice::{Case, advice};
use crate::costing;
use crate::documents::offering::{self, Offering};
use crate::documents::{quote_document, views::office};
use crate::outside::desk::photos;
use crate::outside::files;
use crate::press::layout::style::Look;
use crate::press::pdf;
use crate::reading::{Problem, Problems, caret};

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
            pour: desk.days[0].day,
        };
        let figures = offering::figures(of, Look::default().accent);
        let document = match quote_document(&offering::view(of), &figures) {
            Ok(document) => document,
            Err(error) => {
                problems.push(
                    Problem::new("cannot-set-page", error.to_string())
                        .help("write it with letters of the bundled face, or shorter"),
                );
                return None;
            }
        };
        let path = arguments
            .output
            .clone()
            .unwrap_or_else(|| desk.file.with_extension("pdf"));
        refuse_inputs(&path, desk, problems)?;
        if let Err(error) = files::replace(&path, &pdf::write(&document)) {
            eprintln!("cannot write `{}`: {error}", path.display());
            eprintln!(
                "  help: close it where it is open and look at the folder's permissions; an older file is as it was"
            );
            return Some(ExitCode::from(COULD_NOT_RUN));
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
        Some(ExitCode::SUCCESS)
    })
}

/// The PDF never lands on one of the files it is made from.
fn refuse_inputs(
    path: &std::path::Path,
    desk: &crate::outside::desk::Desk,
    problems: &mut Problems,
) -> Option<()> {
    let yaml = path.extension().is_some_and(|ending| {
        ending.eq_ignore_ascii_case("yaml") || ending.eq_ignore_ascii_case("yml")
    });
    if yaml || files::same(path, &desk.file) {
        problems.push(
            Problem::new(
                "output-is-input",
                format!(
                    "`{}` is a file you wrote, not a place for the PDF",
                    path.display()
                ),
            )
            .help("give `-o` a name that ends in .pdf"),
        );
        return None;
    }
    Some(())
}
