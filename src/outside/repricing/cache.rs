//! Books and businesses that many quotes were made from: each text is read once in a run.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::rc::Rc;

use super::whole;
use crate::costing::repricing::{WhatIf, supposed};
use crate::costing::{Prices, prices};
use crate::input::book::{self, PriceBook, sells_alike};
use crate::input::business::{self, Business};
use crate::office::chain::hash;
use crate::office::record::Input;
use crate::outside::files::Files;
use crate::reading::{Node, Problems, Read};
use crate::values::Day;

/// The book with the other prices, read once for all quotes.
#[derive(Debug)]
pub struct NewBook {
    /// Its text as a record keeps it.
    pub input: Input,
    pub node: Node,
    pub book: PriceBook,
}

/// A book that quotes were made by.
#[derive(Debug)]
pub(super) struct QuotedBook {
    pub book: PriceBook,
    /// Whether the other book makes a job buy just the same.
    pub sells_alike: bool,
}

/// A file's name and its text; or why there is none.
type Text = Result<(String, String), String>;

/// A business as it is now, and its usual book; or why there is none.
type Home = Result<(Rc<Business>, Rc<QuotedBook>), String>;

/// What one core has read so far, by the hash of its text or by its path.
#[derive(Debug)]
pub(super) struct Cache<'a> {
    other: &'a NewBook,
    what_ifs: &'a [WhatIf],
    books: BTreeMap<String, Result<Rc<QuotedBook>, String>>,
    businesses: BTreeMap<String, Result<Rc<Business>, String>>,
    homes: BTreeMap<PathBuf, Home>,
    days: BTreeMap<(Vec<Day>, String), Rc<[Prices]>>,
}

impl<'a> Cache<'a> {
    pub fn new(other: &'a NewBook, what_ifs: &'a [WhatIf]) -> Self {
        Self {
            other,
            what_ifs,
            books: BTreeMap::new(),
            businesses: BTreeMap::new(),
            homes: BTreeMap::new(),
            days: BTreeMap::new(),
        }
    }

    pub fn other(&self) -> &'a NewBook {
        self.other
    }

    /// The book of this hash; its text is only asked for the first time.
    pub fn book(
        &mut self,
        sha256: &str,
        text: impl FnOnce() -> Text,
    ) -> Result<Rc<QuotedBook>, String> {
        if let Some(known) = self.books.get(sha256) {
            return known.clone();
        }
        let read = read(text, |node, problems| {
            Ok(QuotedBook {
                book: book::read(node, problems)?,
                sells_alike: sells_alike(node, &self.other.node),
            })
        });
        self.books.insert(sha256.to_owned(), read.clone());
        read
    }

    /// The business of this hash, likewise.
    pub fn business(
        &mut self,
        sha256: &str,
        text: impl FnOnce() -> Text,
    ) -> Result<Rc<Business>, String> {
        if let Some(known) = self.businesses.get(sha256) {
            return known.clone();
        }
        let read = read(text, business::read);
        self.businesses.insert(sha256.to_owned(), read.clone());
        read
    }

    /// The business of this file as it is now, and its usual book.
    pub fn home(&mut self, file: &Path) -> Home {
        if let Some(known) = self.homes.get(file) {
            return known.clone();
        }
        let found = self.opened(file);
        self.homes.insert(file.to_path_buf(), found.clone());
        found
    }

    fn opened(&mut self, file: &Path) -> Home {
        let (name, text) = on_disk(file)?;
        let business = self.business(&hash(text.as_bytes()), || Ok((name, text)))?;
        let usual = business.books.first().ok_or("its business names no book")?;
        let folder = file.parent().unwrap_or(Path::new("."));
        let (name, text) = on_disk(&folder.join(&usual.value))?;
        let book = self.book(&hash(text.as_bytes()), || Ok((name, text)))?;
        Ok((business, book))
    }

    /// The other prices of these pours, with what is supposed.
    pub fn days(&mut self, pours: &[Day], job: &str) -> Rc<[Prices]> {
        let book = &self.other.book;
        let mut held_for = book.holds.iter().filter_map(|hold| hold.job.as_deref());
        // Prices differ by the job only where one was held for it.
        let job = if held_for.any(|held| held == job) {
            job
        } else {
            ""
        };
        let key = (pours.to_vec(), job.to_owned());
        let made = self.days.entry(key).or_insert_with(|| {
            let days: Vec<Prices> = pours.iter().map(|day| prices(book, *day, job)).collect();
            supposed(&days, self.what_ifs).into()
        });
        Rc::clone(made)
    }
}

fn read<T>(
    text: impl FnOnce() -> Text,
    read: impl FnOnce(&Node, &mut Problems) -> Read<T>,
) -> Result<Rc<T>, String> {
    let (name, text) = text()?;
    let mut files = Files::default();
    let id = files.sources.add(&name, text);
    let found = files.read(id, read).map(Rc::new);
    whole(found, &files.problems)
}

/// A file's name and text.
pub(super) fn on_disk(path: &Path) -> Text {
    let mut files = Files::default();
    let read = files.text(path);
    let id = whole(read, &files.problems)?;
    let (name, text) = (files.sources.name(id), files.sources.text(id));
    Ok((name.to_owned(), text.to_owned()))
}
