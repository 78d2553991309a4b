//! `flatwork book`: price books compared, looked over and edited; `import.rs` takes lists in.

mod import;

use std::path::{Path, PathBuf};

use super::ran::Ran;
use crate::documents::views::office::price_book;
use crate::input::book::edit::{self, Wanted};
use crate::input::book::{self, PriceBook, diff, faults};
use crate::outside::files::{self, Files};
use crate::reading::{FileId, Node, Problem, Problems, Read};
use crate::values::{Day, UnitPrice};

#[derive(Debug, clap::Subcommand)]
pub(super) enum Book {
    /// Shows which items of two books differ: changed, added, gone, sold by another unit
    Diff(Diff),
    /// Shows what in a book is worth a second look: no price, old prices, unused items, holds past
    Check(Check),
    /// Sets a price from a day on, in the book itself; comments and order stay
    Set(Set),
    /// Takes a supplier's price list into the book, by a mapping of your own; comments and order stay
    Import(import::Import),
}

#[derive(Debug, clap::Args)]
pub(super) struct Diff {
    /// The book as it was
    old: PathBuf,
    /// The book as it is
    new: PathBuf,
    /// The day whose prices are compared; else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    on: Option<Day>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Check {
    /// The book
    file: PathBuf,
    /// The day it is looked at for; else today
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    on: Option<Day>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Set {
    /// The item, by its name in the book
    item: String,
    /// The new price of one unit, as 189.50
    #[arg(value_parser = super::value::<UnitPrice>)]
    price: UnitPrice,
    /// The day it begins
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
    from: Day,
    /// The book
    #[arg(long, value_name = "FILE")]
    book: PathBuf,
    /// Shows what would change, and writes nothing
    #[arg(long)]
    dry_run: bool,
}

pub(super) fn run(command: &Book, files: &mut Files) -> Ran {
    match command {
        Book::Diff(arguments) => differ(arguments, files),
        Book::Check(arguments) => check(arguments, files),
        Book::Set(arguments) => set(arguments, files),
        Book::Import(arguments) => import::import(arguments, files),
    }
}

fn differ(arguments: &Diff, files: &mut Files) -> Ran {
    let old = read(&arguments.old, files);
    let new = read(&arguments.new, files);
    let (old, new) = (old?.book, new?.book);
    let day = arguments.on.unwrap_or_else(files::today);
    let found = diff::differences(&old, &new, day);
    Ok(price_book::differences(&old, &new, day, &found))
}

fn check(arguments: &Check, files: &mut Files) -> Ran {
    let book = read(&arguments.file, files)?.book;
    let day = arguments.on.unwrap_or_else(files::today);
    Ok(price_book::faults(&book, day, &faults::faults(&book, day)))
}

fn set(arguments: &Set, files: &mut Files) -> Ran {
    let BookFile { id, node, book } = read(&arguments.book, files)?;
    let (item, from) = (&arguments.item, arguments.from);
    let text = files.sources.text(id).to_owned();
    let made = edit::set_price(&text, &node, &book, item, from, arguments.price);
    let Some(edit) = made.map_err(|problem| files.refuse(problem))? else {
        return Ok(format!("{item} has this price from {from} already\n"));
    };
    let edits = [edit];
    let after = edit::made(&text, &edits);
    let wanted = Wanted {
        item: item.clone(),
        day: from,
        price: arguments.price,
    };
    if !edit::holds(&node, &after, &[wanted]) {
        let place = book.items.get(item).map_or(book.place, |item| item.place);
        return Err(files.refuse(edit::not_here(item, place)).into());
    }
    let said = edit::lines(&text, &edits);
    if arguments.dry_run {
        return Ok(said + "nothing was written\n");
    }
    write(&arguments.book, &after, &mut files.problems)?;
    Ok(said)
}

/// Puts the edited text in place of the book.
fn write(path: &Path, after: &str, problems: &mut Problems) -> Read<()> {
    // A mark at the front is no part of the text, and stays.
    let marked = files::bytes(path).is_ok_and(|bytes| bytes.starts_with(MARK));
    let mut bytes = if marked { MARK.to_vec() } else { Vec::new() };
    bytes.extend_from_slice(after.as_bytes());
    files::replace(path, &bytes).map_err(|error| {
        let message = format!("cannot write `{}`: {error}", path.display());
        problems.push(
            Problem::new("unwritable-book", message)
                .help("check the permissions of the file and its folder"),
        )
    })
}

/// UTF-8's byte order mark.
const MARK: &[u8] = "\u{feff}".as_bytes();

/// A book and the text it was read from.
struct BookFile {
    id: FileId,
    node: Node,
    book: PriceBook,
}

fn read(path: &Path, files: &mut Files) -> Read<BookFile> {
    let before = files.problems.len();
    let id = files.text(path)?;
    let node = files.tree(id)?;
    let book = files.made(&node, book::read)?;
    files.problems.none_since(before)?;
    Ok(BookFile { id, node, book })
}
