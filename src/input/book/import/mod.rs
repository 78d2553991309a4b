//! A supplier's price list taken into the owner's book, by a mapping that the owner keeps.
//!
//! The list is text with places, as a book is. Prices are exact decimals by the book's own
//! units; nothing is converted unless the mapping says how. What comes of it is a set of edits
//! of the book's text (`edit.rs`), or every problem of all rows.

mod article;
mod cells;
mod list;
mod mapping;

use std::collections::{BTreeMap, BTreeSet};

use article::Article;

pub use list::List;
pub use mapping::Mapping;

use super::PriceBook;
use super::diff::Difference;
use super::edit::{self, Edit, Wanted};
use crate::reading::{At, FileId, Node, Problem, Problems, Read, suggest};
use crate::values::Day;

/// Reads a mapping; what cannot be read is reported.
pub fn mapping(node: &Node, problems: &mut Problems) -> Read<Mapping> {
    node.group(problems)
}

/// Reads a list by its mapping; what it lacks is reported.
pub fn list<'a>(
    file: FileId,
    text: &'a str,
    mapping: &Mapping,
    problems: &mut Problems,
) -> Read<List<'a>> {
    list::read(file, text, mapping, problems)
}

/// What a list brings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// By item, then by day.
    pub changes: Vec<PriceChange>,
    /// Prices that hold in the book already.
    pub already: usize,
    /// Articles that the mapping does not name, in the order of the list.
    pub unmapped: Vec<String>,
}

/// A price that is new, and how it stands to the one before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PriceChange {
    pub wanted: Wanted,
    pub what: Difference,
}

/// The prices a list brings into a book; `from` is the day of those without one of their own.
pub fn taken(
    mapping: &Mapping,
    list: &List<'_>,
    book: &PriceBook,
    from: Option<Day>,
    problems: &mut Problems,
) -> Read<Taken> {
    let before = problems.len();
    if list.from.is_none() && from.is_none() {
        problems.push(
            Problem::new("no-list-date", "nothing says from which day these prices hold")
                .at(mapping.columns.place)
                .help("add `--from 2026-05-15` with their day, or name the column that has it, as `from: Effective`"),
        );
    }
    let mut articles: BTreeMap<&str, Article<'_>> = BTreeMap::new();
    for mapped in &mapping.items {
        let article = Article::new(mapped, book, problems);
        articles.insert(&mapped.article.value, article);
    }
    let mut unmapped: Vec<&str> = Vec::new();
    for row in &list.rows {
        if list.is_too_long(row) {
            // A cell too many moves the others, so the article may stand in any of them.
            if let Some(name) = row.trimmed().find(|name| articles.contains_key(name)) {
                articles.entry(name).and_modify(Article::saw);
                problems.push(list.too_long(row));
            }
            continue;
        }
        let name = row.cell(list.article);
        match articles.get_mut(name) {
            Some(article) => article.read(row, mapping, list, from, problems),
            None if name.is_empty() => {}
            None => unmapped.push(name),
        }
    }
    for mapped in &mapping.items {
        let name = mapped.article.value.as_str();
        let unseen = articles.get(name).is_some_and(Article::is_unseen);
        if unseen && !list.has_open_quote() {
            problems.push(not_listed(&mapped.article, &unmapped));
        }
    }
    problems.none_since(before)?;
    let (mut changes, mut already) = (Vec::new(), 0);
    for article in articles.values() {
        already += article.changes(&mut changes)?;
    }
    changes.sort_by(|a, b| {
        let (a, b) = (&a.wanted, &b.wanted);
        (&a.item, a.day).cmp(&(&b.item, b.day))
    });
    let mut seen = BTreeSet::new();
    unmapped.retain(|name| seen.insert(*name));
    Ok(Taken {
        changes,
        already,
        unmapped: unmapped.into_iter().map(str::to_owned).collect(),
    })
}

fn not_listed(article: &At<String>, unmapped: &[&str]) -> Problem {
    let name = &article.value;
    let help = match suggest::closest(name, unmapped.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => "ask the supplier for it, or take it out of the mapping".to_owned(),
    };
    Problem::new("not-listed", format!("the list has no article `{name}`"))
        .at(article.place)
        .help(help)
}

/// The edits of the book's text that these changes are, in its order; a book that would say
/// anything else afterwards is not edited.
pub fn edits(
    text: &str,
    node: &Node,
    book: &PriceBook,
    changes: &[PriceChange],
    problems: &mut Problems,
) -> Read<Vec<Edit>> {
    let before = problems.len();
    let mut edits: Vec<(&Wanted, Edit)> = Vec::with_capacity(changes.len());
    for PriceChange { wanted, .. } in changes {
        match edit::set_price(text, node, book, &wanted.item, wanted.day, wanted.price) {
            Ok(edit) => edits.extend(edit.map(|edit| (wanted, edit))),
            Err(problem) => {
                problems.push(problem);
            }
        }
    }
    problems.none_since(before)?;
    // Two new days at one spot stay in their order.
    edits.sort_by_key(|(_, edit)| edit.from);
    let (wanted, edits): (Vec<&Wanted>, Vec<Edit>) = edits.into_iter().unzip();
    let holds = |edits: &[Edit], wanted: &[&Wanted]| {
        let wanted: Vec<Wanted> = wanted.iter().map(|one| (*one).clone()).collect();
        edit::holds(node, &edit::made(text, edits), &wanted)
    };
    let apart = edits.is_sorted_by(|one, next| one.to <= next.from);
    if apart && holds(&edits, &wanted) {
        return Ok(edits);
    }
    // Which of them it is, is only asked where something is wrong.
    let each = wanted.iter().zip(&edits);
    let alone = each.filter(|(one, edit)| !holds(std::slice::from_ref(edit), &[one]));
    let mut refused: BTreeSet<&str> = alone.map(|(one, _)| one.item.as_str()).collect();
    if refused.is_empty() {
        refused = wanted.iter().map(|one| one.item.as_str()).collect();
    }
    for name in refused {
        let item = book.items.get(name);
        problems.push(edit::not_here(
            name,
            item.map_or(book.place, |item| item.place),
        ));
    }
    problems.none_since(before)?;
    Ok(edits)
}

#[cfg(test)]
mod tests;
