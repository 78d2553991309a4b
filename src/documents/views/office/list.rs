//! What a supplier's list brings into a book, in plain text.

use super::counted;
use super::price_book::{LOOK_AGAIN, row};
use crate::documents::table::Align::{Left, Point};
use crate::documents::table::table;
use crate::input::book::PriceBook;
use crate::input::book::import::Taken;

/// So many articles are named that the mapping does not know; the rest is counted.
const NAMED: usize = 5;

/// The lines of the book that change, then each price beside the one before it.
pub fn taken(list: &str, book: &PriceBook, taken: &Taken, lines: &str) -> String {
    let mut out = vec![format!("{list} into {}", book.name), String::new()];
    if !taken.changes.is_empty() {
        out.push(lines.to_owned());
    }
    let rows = taken.changes.iter().map(|change| {
        let mut cells = row(&change.wanted.item, &change.what);
        cells.insert(1, change.wanted.day.to_string());
        cells
    });
    let aligns = [Left, Left, Point, Point, Point, Left];
    out.extend(table(&aligns, &rows.collect::<Vec<_>>()));
    if taken.changes.iter().any(|change| change.what.is_jump()) {
        out.extend([String::new(), LOOK_AGAIN.to_owned()]);
    }
    if !taken.changes.is_empty() {
        out.push(String::new());
    }
    out.push(format!(
        "{}; {}",
        counted(taken.changes.len(), "price is new", "prices are new"),
        counted(taken.already, "holds already", "hold already")
    ));
    out.extend(unmapped(&taken.unmapped));
    out.join("\n") + "\n"
}

/// One line about what the mapping leaves aside.
fn unmapped(names: &[String]) -> Option<String> {
    let (first, more) = names.split_at(names.len().min(NAMED));
    let more = match more.len() {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    let counted = counted(
        names.len(),
        "article of the list is",
        "articles of the list are",
    );
    (!first.is_empty()).then(|| format!("{counted} not mapped: {}{more}", first.join(", ")))
}
