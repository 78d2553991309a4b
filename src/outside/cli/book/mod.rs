//! `flatwork book`: price books compared, looked over and edited; `book/import.rs` takes lists in.

mod import;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::say;
use super::target::shown;
use crate::documents::views::office::price_book;
use crate::input::book::edit::{self, Wanted};
use crate::input::book::{self, PriceBook, diff, faults};
use crate::outside::files;
use crate::reading::{FileId, Node, Problem, Problems, Sources, yaml};
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
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    on: Option<Day>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Check {
    /// The book
    file: PathBuf,
    /// The day it is looked at for; else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    on: Option<Day>,
}

#[derive(Debug, clap::Args)]
pub(super) struct Set {
    /// The item, by its name in the book
    item: String,
    /// The new price of one unit, as 189.50
    #[arg(value_parser = price)]
    price: UnitPrice,
    /// The day it begins
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    from: Day,
    /// The book
    #[arg(long, value_name = "FILE")]
    book: PathBuf,
    /// Shows what would change, and writes nothing
    #[arg(long)]
    dry_run: bool,
}

fn price(text: &str) -> Result<UnitPrice, String> {
    text.parse()
        .map_err(|error: crate::values::Unreadable| format!("{}; {}", error.message, error.help))
}

pub(super) fn run(command: &Book) -> ExitCode {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let done = match command {
        Book::Diff(arguments) => differ(arguments, &mut sources, &mut problems),
        Book::Check(arguments) => check(arguments, &mut sources, &mut problems),
        Book::Set(arguments) => set(arguments, &mut sources, &mut problems),
        Book::Import(arguments) => import::import(arguments, &mut sources, &mut problems),
    };
    shown(done, &problems, &sources)
}

fn differ(arguments: &Diff, sources: &mut Sources, problems: &mut Problems) -> Option<()> {
    let old = read(&arguments.old, sources, problems);
    let new = read(&arguments.new, sources, problems);
    let ((_, _, old), (_, _, new)) = (old?, new?);
    let day = arguments.on.unwrap_or_else(files::today);
    let found = diff::differences(&old, &new, day);
    say(&price_book::differences(&old, &new, day, &found));
    Some(())
}

fn check(arguments: &Check, sources: &mut Sources, problems: &mut Problems) -> Option<()> {
    let (_, _, book) = read(&arguments.file, sources, problems)?;
    let day = arguments.on.unwrap_or_else(files::today);
    say(&price_book::faults(&book, day, &faults::faults(&book, day)));
    Some(())
}

fn set(arguments: &Set, sources: &mut Sources, problems: &mut Problems) -> Option<()> {
    let (id, node, book) = read(&arguments.book, sources, problems)?;
    let (item, from) = (&arguments.item, arguments.from);
    let text = sources.text(id).to_owned();
    let made = edit::set_price(&text, &node, &book, item, from, arguments.price);
    let edits = match made {
        Ok(Some(edit)) => [edit],
        Ok(None) => {
            say(&format!("{item} has this price from {from} already\n"));
            return Some(());
        }
        Err(problem) => {
            problems.push(problem);
            return None;
        }
    };
    let after = edit::made(&text, &edits);
    let wanted = Wanted {
        item: item.clone(),
        day: from,
        price: arguments.price,
    };
    if !edit::holds(&node, &after, &[wanted]) {
        let place = book.items.get(item)?.place;
        problems.push(edit::not_here(item, place));
        return None;
    }
    say(&edit::lines(&text, &edits));
    if arguments.dry_run {
        say("nothing was written\n");
        return Some(());
    }
    write(&arguments.book, &after, problems)
}

/// Puts the edited text in place of the book.
fn write(path: &Path, after: &str, problems: &mut Problems) -> Option<()> {
    // A mark at the front is no part of the text, and stays.
    let marked = files::bytes(path).is_ok_and(|bytes| bytes.starts_with(MARK));
    let mut bytes = if marked { MARK.to_vec() } else { Vec::new() };
    bytes.extend_from_slice(after.as_bytes());
    match files::replace(path, &bytes) {
        Ok(()) => Some(()),
        Err(error) => {
            let name = path.display();
            problems.push(
                Problem::new("unwritable-book", format!("cannot write `{name}`: {error}"))
                    .help("check the permissions of the file and its folder"),
            );
            None
        }
    }
}

/// UTF-8's byte order mark.
const MARK: &[u8] = "\u{feff}".as_bytes();

fn read(
    path: &Path,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<(FileId, Node, PriceBook)> {
    let before = problems.len();
    let id = files::read(path, sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let book = book::read(&node, problems)?;
    (problems.len() == before).then_some((id, node, book))
}
