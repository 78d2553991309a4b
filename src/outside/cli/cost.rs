//! `flatwork cost`.

use std::path::PathBuf;

use super::Format;
use super::pdf_file::{destination, put};
use super::ran::Ran;
use super::sheet::{Chosen, advised, priced_by};
use crate::documents::cost_document;
use crate::documents::views::office::{self, Sheet, books};
use crate::outside::exports;
use crate::outside::files::Files;
use crate::outside::pdf_bytes::pdf_bytes;
use crate::press::layout::style::Look;
use crate::reading::{Problem, Problems};
use crate::values::{Day, Percent};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    /// The takeoff
    file: PathBuf,
    /// The day of the quote, as 2026-05-04; else the takeoff's `quoted`, else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
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
    #[arg(long, value_name = "PERCENT", value_parser = super::value::<Percent>, num_args = 0..=1, require_equals = true, default_missing_value = "10%", conflicts_with = "format")]
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

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let (file, by) = (&arguments.file, &arguments.books);
    let priced = priced_by(file, arguments.on, by, &arguments.chosen, files)?;
    let sheets = priced.sheets(&files.sources);
    if arguments.pdf {
        return pdf(arguments, &sheets, &mut files.problems);
    }
    if let Some(percent) = arguments.rise {
        let texts = sheets
            .iter()
            .map(|sheet| office::rise::text(sheet, percent));
        return Ok(texts.collect::<Vec<_>>().join("\n"));
    }
    Ok(match (&sheets[..], arguments.format) {
        ([sheet], Format::Text) => office::cost::text(sheet),
        ([sheet], Format::Json) => exports::cost::json(sheet),
        ([sheet], Format::Csv) => exports::cost::csv(sheet),
        (several, Format::Text) => books::text(several, arguments.sort.into()),
        (several, Format::Json) => exports::books::json(several),
        (several, Format::Csv) => exports::books::csv(several),
    })
}

/// The cost sheet as a PDF, by one book.
fn pdf(arguments: &Arguments, sheets: &[Sheet<'_>], problems: &mut Problems) -> Ran {
    let [sheet] = sheets else {
        let message = "a cost sheet is of one price book, and here are several";
        let problem = Problem::new("one-book-for-a-pdf", message)
            .help("give `--book` once; without `--pdf` several books are set side by side");
        return Err(problems.push(problem).into());
    };
    let document = cost_document(sheet, &advised(sheet), Look::default().accent);
    let bytes = pdf_bytes(document, problems)?;
    let output = arguments.output.as_ref();
    let path = destination(&arguments.file, output, "cost.pdf", problems)?;
    put(&path, &bytes)?;
    Ok(format!("cost sheet  {}\n", path.display()))
}

impl From<Sort> for books::Order {
    fn from(sort: Sort) -> Self {
        match sort {
            Sort::Class => Self::Class,
            Sort::Size => Self::Size,
        }
    }
}
