//! `flatwork reprice`.

use std::path::{Path, PathBuf};

use indicatif::ProgressBar;

use super::Format;
use super::pdf_file::{destination, put};
use super::ran::{Ran, say};
use super::reissue::{Reissue, chosen, reissue};
use crate::costing::outcome::Outcomes;
use crate::costing::repricing::{Supposed, WhatIf};
use crate::documents::views::office::reprice;
use crate::documents::{Asked, repriced_document};
use crate::input::book::{self, PriceBook};
use crate::input::business;
use crate::office::record::InputKind;
use crate::outside::business_folder::{self, no_price_book};
use crate::outside::files::{self, Files};
use crate::outside::pdf_bytes::pdf_bytes;
use crate::outside::repricing::{FoundQuote, NewBook, RepriceQuestion, ask, open_jobs, takeoffs};
use crate::outside::{exports, records};
use crate::press::layout::style::Look;
use crate::reading::{Problem, Problems, Read};
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
    #[arg(long, value_name = "DATE", value_parser = super::value::<Day>)]
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

pub(super) fn run(arguments: &Arguments, files: &mut Files) -> Ran {
    let question = RepriceQuestion {
        today: arguments.on.unwrap_or_else(files::today),
        on: arguments.on,
        what_ifs: arguments.what_ifs.clone(),
        rooms: arguments.rooms.clone(),
        index: arguments.index,
        each: arguments.why || arguments.format == Format::Json,
    };
    let others = gathered(arguments, &question, files)?;
    let problems = &mut files.problems;
    let bar = ProgressBar::new(others.iter().map(|(_, found)| found.len() as u64).sum());
    let mut answer = Outcomes::default();
    for (other, found) in &others {
        answer.join(ask(found, other, &question, &|| bar.inc(1)));
    }
    bar.finish_and_clear();
    let found = others.first().map_or(&[][..], |(_, found)| found);
    let revised = chosen(&arguments.issue, found, &answer, question.today, problems);
    problems.none()?;
    let page = match &arguments.output {
        None => String::new(),
        Some(output) => {
            let asked = asked(arguments, &question, &others);
            let document = repriced_document(&answer, &asked, Look::default().accent);
            let bytes = pdf_bytes(document, problems)?;
            let path = destination(input(arguments, output), Some(output), "pdf", problems)?;
            put(&path, &bytes)?;
            format!("\npage  {}\n", path.display())
        }
    };
    say(&match arguments.format {
        Format::Text => reprice::text(&answer, question.today, arguments.why),
        Format::Json => exports::reprice::json(&answer, question.today),
        Format::Csv => reprice::quotes().csv(&answer.findings(question.today)),
    });
    say(&page);
    if !arguments.issue.is_empty() && revised.is_empty() {
        say("\nno open quote on record is below your floor: nothing is sent\n");
    }
    for (other, found) in &others {
        let of = Reissue {
            tell: arguments.tell,
            dry_run: arguments.dry_run,
            today: question.today,
            book: &other.input,
        };
        reissue(&revised, found, &of, problems)?;
    }
    Ok(String::new())
}

/// The file that was asked about and that the page would land on, or any that was.
fn input<'a>(arguments: &'a Arguments, output: &Path) -> &'a Path {
    let mut asked = arguments.paths.iter().chain(&arguments.book);
    let same = asked.find(|file| files::same(output, file));
    same.or(arguments.paths.first())
        .map_or(Path::new("."), PathBuf::as_path)
}

/// All that is asked about, by the book it is asked of.
fn gathered(
    arguments: &Arguments,
    question: &RepriceQuestion,
    files: &mut Files,
) -> Read<Vec<(NewBook, Vec<FoundQuote>)>> {
    if !arguments.issue.is_empty() && 1 < arguments.paths.len() {
        // Two businesses may have the same number.
        let message = "`--issue` sends revisions of one business folder";
        let problem = Problem::new("one-folder", message).help("name that folder only");
        return Err(files.refuse(problem));
    }
    let mut by_book: Vec<(PathBuf, Vec<FoundQuote>)> = Vec::new();
    for path in &arguments.paths {
        let home = if files::exists(path) {
            files::business_file(path)
                .and_then(|file| file.parent().map(Path::to_path_buf))
                .unwrap_or_default()
        } else {
            business_folder::find(path, &mut files.problems)?
        };
        let books = books(&home, files)?;
        let found = found(path, &home, &books, &mut files.problems);
        let book = arguments.book.clone().or(books.into_iter().next());
        let book = book.ok_or_else(|| files.refuse(no_price_book()))?;
        match by_book.iter_mut().find(|(known, _)| *known == book) {
            Some((_, all)) => all.extend(found),
            None => by_book.push((book, found)),
        }
    }
    let mut others = Vec::new();
    for (path, found) in by_book {
        let other = read(&path, files)?;
        let named = question.what_ifs.iter().map(|what_if| &what_if.item);
        for item in named.chain(&question.rooms) {
            if !other.book.items.contains_key(item) {
                files.refuse(other.book.unknown_item(item));
            }
        }
        others.push((other, found));
    }
    files.problems.none()?;
    Ok(others)
}

/// What was asked, for the head of the page.
fn asked(
    arguments: &Arguments,
    question: &RepriceQuestion,
    others: &[(NewBook, Vec<FoundQuote>)],
) -> Asked {
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

/// What is supposed, by the names of the book.
fn supposed(what_ifs: &[WhatIf], book: &PriceBook) -> Vec<(String, Supposed)> {
    let named = |what_if: &WhatIf| {
        let key = what_if.item.as_str();
        let name = book.items.get(key).map_or(key, |item| item.called(key));
        (name.to_owned(), what_if.to)
    };
    what_ifs.iter().map(named).collect()
}

fn found(path: &Path, home: &Path, books: &[PathBuf], problems: &mut Problems) -> Vec<FoundQuote> {
    if files::exists(path) {
        return vec![FoundQuote::Takeoff(path.to_path_buf())];
    }
    let folder = records::folder(home);
    if !records::names(&folder, problems).is_empty() {
        return open_jobs(&folder, problems);
    }
    let is_book = |file: &PathBuf| books.iter().any(|book| files::same(book, file));
    let takeoffs = takeoffs(path).into_iter();
    let takeoffs = takeoffs.filter(|file| !is_book(file));
    takeoffs.map(FoundQuote::Takeoff).collect()
}

/// The books of the business in this folder, the usual one first.
fn books(home: &Path, files: &mut Files) -> Read<Vec<PathBuf>> {
    let id = files.text(&home.join("business.yaml"))?;
    let node = files.tree(id)?;
    let books = business::books(&node).into_iter();
    Ok(books.map(|book| home.join(book.value)).collect())
}

/// The book with the other prices.
fn read(path: &Path, files: &mut Files) -> Read<NewBook> {
    let id = files.text(path)?;
    let node = files.tree(id)?;
    let book = files.made(&node, book::read)?;
    let input = files.input(InputKind::PriceBook, id);
    Ok(NewBook { input, node, book })
}
