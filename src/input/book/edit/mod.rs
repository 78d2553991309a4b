//! A price set in the text of a book: only its own bytes change, so comments and order stay.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use super::PriceBook;
use crate::reading::{Entry, Node, Place, Problem, Problems, Sources, Value, yaml};
use crate::values::{Day, UnitPrice};

/// Bytes of a text and what stands there instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Edit {
    pub from: usize,
    pub to: usize,
    pub text: String,
}

/// What a book is to say: this price of this item from this day on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    pub item: String,
    pub day: Day,
    pub price: UnitPrice,
}

/// The text with these changes, which stand in the order of the text and do not overlap.
pub fn made(text: &str, edits: &[Edit]) -> String {
    let mut out = String::with_capacity(text.len() + 32 * edits.len());
    let mut at = 0;
    for edit in edits {
        out.push_str(&text[at..edit.from]);
        out.push_str(&edit.text);
        at = edit.to;
    }
    out.push_str(&text[at..]);
    out
}

/// The change that gives `item` this price from `day` on; none when it has just that already.
///
/// A day that has a price gets another one in its place. A new day goes after the last day
/// before it, written as its neighbours are.
///
/// # Errors
/// When the book has no such item, or its prices are written in a way that cannot be edited
/// without touching something else.
pub fn set_price(
    text: &str,
    node: &Node,
    book: &PriceBook,
    item: &str,
    day: Day,
    price: UnitPrice,
) -> Result<Option<Edit>, Problem> {
    let Some(found) = book.items.get(item) else {
        return Err(book.unknown_item(item));
    };
    if let Some(dated) = found.dated.iter().find(|dated| dated.from == day) {
        if dated.wage.is_some() {
            return Err(Problem::new(
                "wage-not-price",
                format!("the hour of `{item}` is made of wage and burden, not one price"),
            )
            .at(dated.place)
            .help("change the wage in the book itself"));
        }
        if dated.price == price {
            return Ok(None);
        }
        return Ok(Some(Edit {
            from: dated.place.start as usize,
            to: dated.place.end as usize,
            text: written(price),
        }));
    }
    let prices = entry(node, "items")
        .and_then(|items| entry(&items.node, item))
        .and_then(|item| entry(&item.node, "prices"))
        .map(|prices| &prices.node);
    let Some(Node {
        place,
        value: Value::Map(entries),
        ..
    }) = prices
    else {
        return Err(not_here(item, found.place));
    };
    let new = format!("{}: {}", iso(day), written(price));
    let begun = |entry: &&Entry| entry.key.parse::<Day>().is_ok_and(|from| from < day);
    let last = entries.iter().rfind(begun);
    let in_braces = text[place.start as usize..].starts_with('{');
    let edit = match (last, entries.first()) {
        (Some(last), _) if in_braces => insert(end(text, &last.node), format!(", {new}")),
        (None, Some(first)) if in_braces => {
            insert(first.key_place.start as usize, format!("{new}, "))
        }
        (Some(last), _) => {
            let from = end(text, &last.node).max(last.key_place.end as usize);
            let line_end = text[from..]
                .find(['\n', '\r'])
                .map_or(text.len(), |at| from + at);
            let indent = indent(text, last.key_place);
            insert(line_end, format!("{}{indent}{new}", line_break(text)))
        }
        (None, Some(first)) => {
            let indent = indent(text, first.key_place);
            let at = first.key_place.start as usize;
            insert(at, format!("{new}{}{indent}", line_break(text)))
        }
        (None, None) => return Err(not_here(item, found.place)),
    };
    Ok(Some(edit))
}

/// The lines that differ, `-` before the old and `+` before the new ones, each with its number.
pub fn lines(text: &str, edits: &[Edit]) -> String {
    let breaks = |text: &str| text.matches('\n').count();
    let mut out = String::new();
    let (mut counted, mut old_number, mut new_number) = (0, 1, 1);
    let mut rest = edits;
    while let [first, ..] = rest {
        let start = text[..first.from].rfind('\n').map_or(0, |at| at + 1);
        let end = |edit: &Edit| {
            let line_end = text[edit.to..].find('\n');
            line_end.map_or(text.len(), |at| edit.to + at)
        };
        // Changes of one line are shown together.
        let mut to = end(first);
        let here = rest.iter().take_while(|edit| {
            let together = edit.from <= to;
            to = if together { end(edit) } else { to };
            together
        });
        let (here, others) = rest.split_at(here.count());
        let within = here.iter().map(|edit| Edit {
            from: edit.from - start,
            to: edit.to - start,
            text: edit.text.clone(),
        });
        let old = &text[start..to];
        let new = made(old, &within.collect::<Vec<_>>());
        let before = breaks(&text[counted..start]);
        old_number += before;
        new_number += before;
        differing(&mut out, (old_number, old), (new_number, &new));
        old_number += breaks(old);
        new_number += breaks(&new);
        counted = to;
        rest = others;
    }
    out
}

/// What differs between a few lines and the same lines changed, each with its first number.
fn differing(out: &mut String, old: (usize, &str), new: (usize, &str)) {
    let split = |(number, text): (usize, &'_ str)| -> Vec<(usize, String)> {
        let lines = text.split('\n').map(|line| line.trim_end_matches('\r'));
        lines
            .enumerate()
            .map(|(i, line)| (number + i, line.to_owned()))
            .collect()
    };
    let (old, new) = (split(old), split(new));
    let same = |pair: &(&(usize, String), &(usize, String))| pair.0.1 == pair.1.1;
    let front = old.iter().zip(&new).take_while(same).count();
    let (old, new) = (&old[front..], &new[front..]);
    let back = old.iter().rev().zip(new.iter().rev());
    let back = back.take_while(same).count();
    for (sign, rest) in [('-', old), ('+', new)] {
        for (number, line) in &rest[..rest.len() - back] {
            let _ = writeln!(out, "{number:>5} {sign} {line}");
        }
    }
}

/// The message for prices that stand elsewhere, or as something this cannot edit.
pub fn not_here(item: &str, place: Place) -> Problem {
    Problem::new(
        "cannot-edit-price",
        format!("the prices of `{item}` are written so that a new one would change something else"),
    )
    .at(place)
    .help("write them out for this item alone, such as `{2026-03-01: 34.50}`, or change the book by hand")
}

/// Whether the edited text can be read as a book and says just what was wanted, and nothing else
/// otherwise than before.
pub fn holds(old: &Node, after: &str, wanted: &[Wanted]) -> bool {
    let (mut sources, mut problems) = (Sources::default(), Problems::default());
    let id = sources.add("book", after.to_owned());
    let Ok(new) = yaml::read(id, &sources, &mut problems) else {
        return false;
    };
    let read = super::read(&new, &mut problems);
    read.is_ok() && problems.is_empty() && only_these(old, &new, wanted)
}

/// Whether the new text says the same as the old one but for these prices: what stands for several
/// items by an anchor may not change with one of them.
pub fn only_these(old: &Node, new: &Node, wanted: &[Wanted]) -> bool {
    let (old, new) = (leaves(old), leaves(new));
    let wanted: BTreeMap<Vec<String>, String> = wanted
        .iter()
        .map(|one| {
            let path = ["items", &one.item, "prices", &iso(one.day)].map(str::to_owned);
            (path.to_vec(), written(one.price))
        })
        .collect();
    let other = |(path, _): &&(Vec<String>, String)| !wanted.contains_key(path);
    let said = |(path, text): &(Vec<String>, String)| wanted.get(path) == Some(text);
    old.iter().filter(other).eq(new.iter().filter(other))
        && new.iter().filter(|leaf| said(leaf)).count() == wanted.len()
}

/// Every scalar by the keys that lead to it, in order of the text.
fn leaves(node: &Node) -> Vec<(Vec<String>, String)> {
    fn walk(node: &Node, path: &mut Vec<String>, found: &mut Vec<(Vec<String>, String)>) {
        match &node.value {
            Value::Nothing => found.push((path.clone(), String::new())),
            Value::Text(text) => found.push((path.clone(), text.clone())),
            Value::List(nodes) => {
                for (i, node) in nodes.iter().enumerate() {
                    path.push(i.to_string());
                    walk(node, path, found);
                    path.pop();
                }
            }
            Value::Map(entries) => {
                for entry in entries {
                    path.push(entry.key.clone());
                    walk(&entry.node, path, found);
                    path.pop();
                }
            }
        }
    }
    let mut found = Vec::new();
    walk(node, &mut Vec::new(), &mut found);
    found
}

fn entry<'a>(node: &'a Node, key: &str) -> Option<&'a Entry> {
    match &node.value {
        Value::Map(entries) => entries.iter().find(|entry| entry.key == key),
        Value::Nothing | Value::Text(_) | Value::List(_) => None,
    }
}

const fn insert(at: usize, text: String) -> Edit {
    Edit {
        from: at,
        to: at,
        text,
    }
}

/// Where the last of a value stands; the place of a block ends where the next thing begins.
fn end(text: &str, node: &Node) -> usize {
    if text[node.place.start as usize..].starts_with(['{', '[']) {
        return node.place.end as usize;
    }
    match &node.value {
        Value::Map(entries) => entries.last().map(|entry| end(text, &entry.node)),
        Value::List(nodes) => nodes.last().map(|node| end(text, node)),
        Value::Nothing | Value::Text(_) => None,
    }
    .unwrap_or(node.place.end as usize)
}

/// What stands before a key on its line.
fn indent(text: &str, key: Place) -> String {
    let before = &text[..key.start as usize];
    let line = before.rfind(['\n', '\r']).map_or(0, |at| at + 1);
    before[line..]
        .chars()
        .map(|c| if c == '\t' { '\t' } else { ' ' })
        .collect()
}

/// As the text itself breaks its lines.
fn line_break(text: &str) -> &'static str {
    match text.find(['\n', '\r']) {
        Some(at) if text[at..].starts_with("\r\n") => "\r\n",
        Some(at) if text[at..].starts_with('\r') => "\r",
        Some(_) | None => "\n",
    }
}

fn iso(day: Day) -> String {
    day.to_string()
}

fn written(price: UnitPrice) -> String {
    price.to_string().replace(',', "")
}

#[cfg(test)]
mod tests;
