//! `flatwork book import`: a supplier's price list taken into a book.

use std::path::PathBuf;

use super::{read, write};
use crate::documents::views::office::list;
use crate::input::book::{edit, import};
use crate::outside::cli::say;
use crate::outside::files;
use crate::reading::{Problems, Sources, yaml};
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
    #[arg(long, value_name = "DATE", value_parser = crate::outside::cli::day)]
    from: Option<Day>,
    /// Shows what would change, and writes nothing
    #[arg(long)]
    dry_run: bool,
}

pub(super) fn import(
    arguments: &Import,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<()> {
    let book = read(&arguments.book, sources, problems);
    let mapping = files::read(&arguments.map, sources, problems)
        .and_then(|id| yaml::read(id, sources, problems))
        .and_then(|node| import::mapping(&node, problems).ok());
    let file = files::read(&arguments.file, sources, problems);
    let ((id, node, book), mapping, file) = (book?, mapping?, file?);
    let rows = import::list(file, sources.text(file), &mapping, problems)?;
    let taken = import::taken(&mapping, &rows, &book, arguments.from, problems)?;
    if !problems.is_empty() {
        return None;
    }
    let text = sources.text(id);
    let edits = import::edits(text, &node, &book, &taken.changes, problems)?;
    say(&list::taken(
        sources.name(file),
        &book,
        &taken,
        &edit::lines(text, &edits),
    ));
    if arguments.dry_run || edits.is_empty() {
        say("nothing was written\n");
        return Some(());
    }
    write(&arguments.book, &edit::made(text, &edits), problems)
}
