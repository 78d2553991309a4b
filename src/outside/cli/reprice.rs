//! `flatwork reprice`.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use indicatif::ProgressBar;

use super::pdf_file::print;
use super::reissue::{Reissue, chosen, reissue};
use super::target::shown;
use super::{Format, say};
use crate::costing::repricing::{Supposed, WhatIf};
use crate::documents::views::office::reprice::{self, Answer};
use crate::documents::{Asked, DocumentError, repriced_document};
use crate::input::book::{self, PriceBook, unknown_item};
use crate::input::business;
use crate::outside::repricing::{Found, NewBook, Question, ask, open_jobs, takeoffs};
use crate::outside::{business_folder, exports, files, records};
use crate::press::layout::style::Look;
use crate::press::page::Document;
use crate::reading::{Problem, Problems, Sources, yaml};
use crate::values::{Day, Money, Percent, UnitPrice};

#[derive(Debug, clap::Args)]
pub(super) struct Arguments {
    /// Takeoffs, or business folders: what is on record there, else the takeoffs in it
    #[arg(default_value = ".")]
    paths: Vec<PathBuf>,
    /// The book with the other prices; else the usual one, as it is now
    #[arg(long, value_name = "FILE")]
    book: Option<PathBuf>,
    /// The day it is asked; else today
    #[arg(long, value_name = "DATE", value_parser = super::day)]
    on: Option<Day>,
    /// Supposes a price: --what-if 'ready-mix=+8%' or 'ready-mix=172.50'; may be given several times
    #[arg(long = "what-if", value_name = "ITEM=PRICE", value_parser = what_if)]
    what_ifs: Vec<WhatIf>,
    /// How far this item may rise before each quote is below its floor; may be given several times
    #[arg(long = "room", value_name = "ITEM")]
    rooms: Vec<String>,
    /// The published price of a cubic yard, for contracts with an escalation clause
    #[arg(long, value_name = "AMOUNT", value_parser = super::money)]
    index: Option<Money>,
    /// Tells the causes of each quote, too
    #[arg(long)]
    why: bool,
    /// Writes the answer as a page to print, too, for the office
    #[arg(short, long, value_name = "FILE.pdf", conflicts_with = "format")]
    output: Option<PathBuf>,
    /// Sends revisions of these numbers, or of all that are `below-floor`; separated by commas
    #[arg(long, value_name = "NUMBER", value_delimiter = ',', conflicts_with_all = ["what_ifs", "format"])]
    issue: Vec<String>,
    /// With --issue: the customer reads which quote and which total it takes the place of
    #[arg(long, requires = "issue")]
    tell: bool,
    /// With --issue: shows what would be sent, and writes nothing
    #[arg(long, requires = "issue")]
    dry_run: bool,
    /// Text to read, or JSON or CSV for other programs
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

fn what_if(text: &str) -> Result<WhatIf, String> {
    let form = "write the item and its price, as `ready-mix=+8%` or `ready-mix=172.50`";
    let (item, price) = text.rsplit_once('=').ok_or(form)?;
    let price = price.trim();
    let to = if price.ends_with('%') {
        let number = price.trim_start_matches(['+', '-']);
        let percent: Percent = number
            .parse()
            .map_err(|error: crate::values::Unreadable| format!("{}; {form}", error.message))?;
        Supposed::By(if price.starts_with('-') {
            Percent::new(-percent.number())
        } else {
            percent
        })
    } else {
        let price: Result<UnitPrice, _> = price.parse();
        Supposed::Price(price.map_err(|error| format!("{}; {form}", error.message))?)
    };
    Ok(WhatIf {
        item: item.trim().to_owned(),
        to,
    })
}

pub(super) fn run(arguments: &Arguments) -> ExitCode {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    match all(arguments, &mut sources, &mut problems) {
        Some(Err(status)) => status,
        Some(Ok(())) => shown(Some(()), &problems, &sources),
        None => shown(None, &problems, &sources),
    }
}

/// `Err` is the exit status where the disk refused the page.
fn all(
    arguments: &Arguments,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Result<(), ExitCode>> {
    let question = Question {
        today: arguments.on.unwrap_or_else(files::today),
        on: arguments.on,
        what_ifs: arguments.what_ifs.clone(),
        rooms: arguments.rooms.clone(),
        index: arguments.index,
        each: arguments.why || arguments.format == Format::Json,
    };
    let others = gathered(arguments, &question, sources, problems)?;
    let bar = ProgressBar::new(others.iter().map(|(_, found)| found.len() as u64).sum());
    let mut answer = Answer::default();
    for (other, found) in &others {
        answer.join(ask(found, other, &question, &|| bar.inc(1)));
    }
    bar.finish_and_clear();
    let found = others.first().map_or(&[][..], |(_, found)| found);
    let revised = chosen(&arguments.issue, found, &answer, question.today, problems);
    if !problems.is_empty() {
        return None;
    }
    let page = match &arguments.output {
        None => None,
        Some(output) => {
            let document = repriced_document(
                &answer,
                &asked(arguments, &question, &others),
                Look::default().accent,
            );
            match printed(document, arguments, output, problems)? {
                Ok(path) => Some(path),
                Err(status) => return Some(Err(status)),
            }
        }
    };
    say(&match arguments.format {
        Format::Text => reprice::text(&answer, question.today, arguments.why),
        Format::Json => exports::reprice::json(&answer, question.today),
        Format::Csv => exports::reprice::csv(&answer, question.today),
    });
    if let Some(path) = page {
        say(&format!("\npage  {}\n", path.display()));
    }
    if !arguments.issue.is_empty() && revised.is_empty() {
        say("\nno open quote on record is below your floor: nothing is sent\n");
    }
    for (other, found) in &others {
        let of = Reissue {
            tell: arguments.tell,
            dry_run: arguments.dry_run,
            today: question.today,
            book: (sources.name(other.file), sources.text(other.file)),
        };
        reissue(&revised, found, &of, problems)?;
    }
    Some(Ok(()))
}

/// All that is asked about, by the book it is asked of.
fn gathered(
    arguments: &Arguments,
    question: &Question,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<Vec<(NewBook, Vec<Found>)>> {
    if !arguments.issue.is_empty() && 1 < arguments.paths.len() {
        // Two businesses may have the same number.
        problems.push(
            Problem::new(
                "one-folder",
                "`--issue` sends revisions of one business folder",
            )
            .help("name that folder only"),
        );
        return None;
    }
    let mut by_book: Vec<(PathBuf, Vec<Found>)> = Vec::new();
    for path in &arguments.paths {
        let home = if files::exists(path) {
            files::business_file(path)
                .and_then(|file| file.parent().map(Path::to_path_buf))
                .unwrap_or_default()
        } else {
            business_folder::find(path, problems)?
        };
        let books = books(&home, sources, problems)?;
        let found = found(path, &home, &books, problems);
        let Some(book) = arguments.book.clone().or(books.into_iter().next()) else {
            problems.push(
                Problem::new("no-price-book", "`books` names no price book").help(
                    "write `books: [price-books/my-plant.yaml]` in business.yaml, or say `--book`",
                ),
            );
            return None;
        };
        match by_book.iter_mut().find(|(known, _)| *known == book) {
            Some((_, all)) => all.extend(found),
            None => by_book.push((book, found)),
        }
    }
    let mut others = Vec::new();
    for (path, found) in by_book {
        let other = read(&path, sources, problems)?;
        let named = question.what_ifs.iter().map(|what_if| &what_if.item);
        for item in named.chain(&question.rooms) {
            if !other.book.items.contains_key(item) {
                let known = other.book.items.keys().map(String::as_str);
                problems.push(unknown_item(item, known));
            }
        }
        others.push((other, found));
    }
    problems.is_empty().then_some(others)
}

/// What was asked, for the head of the page.
fn asked(arguments: &Arguments, question: &Question, others: &[(NewBook, Vec<Found>)]) -> Asked {
    let mut books: Vec<String> = Vec::new();
    for (other, _) in others {
        if !books.contains(&other.book.name) {
            books.push(other.book.name.clone());
        }
    }
    let last = others.last();
    Asked {
        today: question.today,
        books,
        another: arguments.book.is_some(),
        supposed: last
            .map(|(other, _)| supposed(&question.what_ifs, &other.book))
            .unwrap_or_default(),
    }
}

/// The page on disk; it never lands on a file that was asked about.
fn printed(
    document: Result<Document, DocumentError>,
    arguments: &Arguments,
    output: &PathBuf,
    problems: &mut Problems,
) -> Option<Result<PathBuf, ExitCode>> {
    let mut asked = arguments.paths.iter().chain(&arguments.book);
    let same = |file: &&PathBuf| files::same(output, file);
    let input = asked.find(same).or(arguments.paths.first())?;
    print(document, input, Some(output), "pdf", problems)
}

/// What is supposed, by the names of the book.
fn supposed(what_ifs: &[WhatIf], book: &PriceBook) -> Vec<(String, Supposed)> {
    let named = |what_if: &WhatIf| {
        let item = book.items.get(&what_if.item);
        let name = item.map_or(&what_if.item, |item| &item.is);
        (name.clone(), what_if.to)
    };
    what_ifs.iter().map(named).collect()
}

fn found(path: &Path, home: &Path, books: &[PathBuf], problems: &mut Problems) -> Vec<Found> {
    if files::exists(path) {
        return vec![Found::Takeoff(path.to_path_buf())];
    }
    let folder = records::folder(home);
    if !records::names(&folder, problems).is_empty() {
        return open_jobs(&folder, problems);
    }
    let is_book = |file: &PathBuf| books.iter().any(|book| files::same(book, file));
    let takeoffs = takeoffs(path).into_iter();
    let takeoffs = takeoffs.filter(|file| !is_book(file));
    takeoffs.map(Found::Takeoff).collect()
}

/// The books of the business in this folder, the usual one first.
fn books(home: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<Vec<PathBuf>> {
    let id = files::read(&home.join("business.yaml"), sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let books = business::books(&node).into_iter();
    Some(books.map(|book| home.join(book.value)).collect())
}

/// The book with the other prices.
fn read(path: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<NewBook> {
    let id = files::read(path, sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let book = book::read(&node, problems)?;
    Some(NewBook {
        file: id,
        node,
        book,
    })
}
