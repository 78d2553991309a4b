//! `flatwork reprice`.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use indicatif::ProgressBar;

use super::target::shown;
use super::{Format, say};
use crate::costing::repricing::{Supposed, WhatIf};
use crate::documents::views::office::reprice::{self, Answer};
use crate::input::book::{self, unknown_item};
use crate::input::business;
use crate::outside::repricing::{Found, Other, Question, ask, open_jobs, takeoffs};
use crate::outside::{cabinet, exports, files, home};
use crate::reading::{Problems, Sources, yaml};
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
    let done = all(arguments, &mut sources, &mut problems);
    shown(done, &problems, &sources)
}

fn all(arguments: &Arguments, sources: &mut Sources, problems: &mut Problems) -> Option<()> {
    let question = Question {
        today: arguments.on.unwrap_or_else(files::today),
        on: arguments.on,
        what_ifs: arguments.what_ifs.clone(),
        rooms: arguments.rooms.clone(),
        index: arguments.index,
        each: arguments.why || arguments.format == Format::Json,
    };
    let mut by_book: Vec<(PathBuf, Vec<Found>)> = Vec::new();
    for path in &arguments.paths {
        let home = if files::exists(path) {
            files::business_file(path)
                .and_then(|file| file.parent().map(Path::to_path_buf))
                .unwrap_or_default()
        } else {
            home::find(path, problems)?
        };
        let book = match &arguments.book {
            Some(book) => book.clone(),
            None => usual(&home, sources, problems)?,
        };
        let found = found(path, &home, problems);
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
    if !problems.is_empty() {
        return None;
    }
    let bar = ProgressBar::new(others.iter().map(|(_, found)| found.len() as u64).sum());
    let mut answer = Answer::default();
    for (other, found) in &others {
        answer.join(ask(found, other, &question, &|| bar.inc(1)));
    }
    bar.finish_and_clear();
    say(&match arguments.format {
        Format::Text => reprice::text(&answer, question.today, arguments.why),
        Format::Json => exports::reprice::json(&answer, question.today),
        Format::Csv => exports::reprice::csv(&answer, question.today),
    });
    Some(())
}

fn found(path: &Path, home: &Path, problems: &mut Problems) -> Vec<Found> {
    if files::exists(path) {
        return vec![Found::Takeoff(path.to_path_buf())];
    }
    let folder = cabinet::folder(home);
    if !cabinet::names(&folder, problems).is_empty() {
        return open_jobs(&folder, problems);
    }
    takeoffs(path).into_iter().map(Found::Takeoff).collect()
}

/// The usual book of the business in this folder.
fn usual(home: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<PathBuf> {
    let id = files::read(&home.join("business.yaml"), sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let book = business::books(&node).into_iter().next()?;
    Some(home.join(book.value))
}

/// The book with the other prices.
fn read(path: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<Other> {
    let id = files::read(path, sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let book = book::read(&node, problems)?;
    Some(Other { node, book })
}
