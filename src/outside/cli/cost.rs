//! `flatwork cost`.

use std::path::PathBuf;
use std::process::ExitCode;

use super::pdf_file::print;
use super::{Chosen, Format, say, with_sheets};
use crate::advice::{Case, advice};
use crate::documents::cost_document;
use crate::documents::cost_sheet::cost_sheet;
use crate::documents::views::office::{self, Sheet, books};
use crate::outside::exports;
use crate::press::layout::style::Look;
use crate::reading::{Problem, Problems};
use crate::values::{Day, Percent};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    /// The takeoff
    file: PathBuf,
    /// The day of the quote, as 2026-05-04; else the takeoff's `quoted`, else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    on: Option<Day>,
    /// Another price book than the usual one; given twice or more, they are set side by side
    #[arg(long = "book", value_name = "FILE")]
    books: Vec<PathBuf>,
    #[command(flatten)]
    chosen: Chosen,
    /// Several books: the lines class by class, or the largest difference first
    #[arg(long, value_enum, default_value_t = Sort::Class)]
    sort: Sort,
    /// What a rise of each item does, of 10% or so much: --rise, --rise=4%
    #[arg(long, value_name = "PERCENT", value_parser = percent, num_args = 0..=1, require_equals = true, default_missing_value = "10%", conflicts_with = "format")]
    rise: Option<Percent>,
    /// Writes the cost sheet for the office as a PDF
    #[arg(long, conflicts_with_all = ["format", "rise"])]
    pdf: bool,
    /// Where the PDF goes; else beside the takeoff, as NAME.cost.pdf
    #[arg(short, long, value_name = "FILE", requires = "pdf")]
    output: Option<PathBuf>,
    /// Text to read, or JSON or CSV for other programs
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
enum Sort {
    Class,
    Size,
}

fn percent(text: &str) -> Result<Percent, String> {
    text.parse()
        .map_err(|error: crate::values::Unreadable| format!("{}; {}", error.message, error.help))
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    with_sheets(
        &arguments.file,
        arguments.on,
        &arguments.books,
        &arguments.chosen,
        |sheets, problems| {
            if arguments.pdf {
                return paper(arguments, sheets, problems);
            }
            let text = match (arguments.rise, sheets) {
                (Some(percent), sheets) => {
                    let each = sheets.iter();
                    let texts = each.map(|sheet| office::rise::text(sheet, percent));
                    texts.collect::<Vec<_>>().join("\n")
                }
                (None, [sheet]) => one(arguments, sheet),
                (None, several) => compared(arguments, several),
            };
            say(&text);
            Some(ExitCode::SUCCESS)
        },
    )
}

fn one(arguments: &Arguments, sheet: &Sheet<'_>) -> String {
    match arguments.format {
        Format::Text => office::cost::text(sheet),
        Format::Json => exports::cost::json(sheet),
        Format::Csv => exports::cost::csv(sheet),
    }
}

/// The cost sheet as a PDF, by one book.
fn paper(arguments: &Arguments, sheets: &[Sheet<'_>], problems: &mut Problems) -> Option<ExitCode> {
    let [sheet] = sheets else {
        problems.push(
            Problem::new(
                "one-book-for-a-pdf",
                "a cost sheet is of one price book, and here are several",
            )
            .help("give `--book` once; without `--pdf` several books are set side by side"),
        );
        return None;
    };
    let found = advice(Case {
        takeoff: sheet.takeoff,
        business: sheet.business,
        book: sheet.book,
        offer: sheet.offer,
        days: sheet.days,
        quoted: sheet.quoted,
    });
    let (view, figures) = cost_sheet(sheet, &found, Look::default().accent);
    let printed = print(
        cost_document(&view, &figures),
        &arguments.file,
        arguments.output.as_ref(),
        "cost.pdf",
        problems,
    )?;
    match printed {
        Ok(path) => {
            say(&format!("cost sheet  {}\n", path.display()));
            Some(ExitCode::SUCCESS)
        }
        Err(status) => Some(status),
    }
}

fn compared(arguments: &Arguments, sheets: &[Sheet<'_>]) -> String {
    match arguments.format {
        Format::Text => books::text(
            sheets,
            match arguments.sort {
                Sort::Class => books::Order::Class,
                Sort::Size => books::Order::Size,
            },
        ),
        Format::Json => exports::books::json(sheets),
        Format::Csv => exports::books::csv(sheets),
    }
}
