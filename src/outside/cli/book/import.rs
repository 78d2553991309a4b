//! `flatwork book import`: a supplier's price list taken into a book.

use std::path::PathBuf;

use super::{BookFile, read, write};
use crate::documents::views::office::list;
use crate::input::book::{edit, import};
use crate::outside::cli::ran::Ran;
use crate::outside::files::Files;
use crate::values::Day;

#[derive(Debug, clap::Args)]
pub(in crate::outside::cli) struct Import {
    /// The supplier's list, as CSV
    file: PathBuf,
    /// The book
    #[arg(long, value_name = "FILE")]
    book: PathBuf,
    /// Which column, article and unit of the list is what in the book
    #[arg(long, value_name = "FILE")]
    map: PathBuf,
    /// The day its prices begin, where the list does not say it
    #[arg(long, value_name = "DATE", value_parser = crate::outside::cli::value::<Day>)]
    from: Option<Day>,
    /// Shows what would change, and writes nothing
    #[arg(long)]
    dry_run: bool,
}

pub(super) fn import(arguments: &Import, files: &mut Files) -> Ran {
    let book = read(&arguments.book, files);
    let mapping = files.text(&arguments.map);
    let mapping = mapping.and_then(|id| files.read(id, import::mapping));
    let file = files.text(&arguments.file);
    let (BookFile { id, node, book }, mapping, file) = (book?, mapping?, file?);
    let Files { sources, problems } = files;
    let rows = import::list(file, sources.text(file), &mapping, problems)?;
    let taken = import::taken(&mapping, &rows, &book, arguments.from, problems)?;
    problems.none()?;
    let text = sources.text(id);
    let edits = import::edits(text, &node, &book, &taken.changes, problems)?;
    let lines = edit::lines(text, &edits);
    let said = list::taken(sources.name(file), &book, &taken, &lines);
    if arguments.dry_run || edits.is_empty() {
        return Ok(said + "nothing was written\n");
    }
    write(&arguments.book, &edit::made(text, &edits), problems)?;
    Ok(said)
}
