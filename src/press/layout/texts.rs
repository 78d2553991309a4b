//! Every text of a document, to check its characters before anything is set.

use super::block::{Block, Cell, Flow};
use super::error::LayoutError;
use crate::press::drawing::{Drawing, Face, Shape};
use crate::press::text::{Rich, Span, uncovered};
use std::collections::{BTreeMap, BTreeSet};

/// Reports all characters that the typeface lacks, at once.
pub(super) fn check(flow: &Flow, figures: &BTreeMap<String, Drawing>) -> Result<(), LayoutError> {
    let mut texts = Vec::new();
    each(flow, None, &mut |text| {
        for span in &text.0 {
            match span {
                Span::Text(words, _) => texts.push(words.as_str()),
                Span::PageOf(..) => {}
            }
        }
    });
    texts.extend(flow.page_number.as_deref());
    let shapes = figures.values().flat_map(|figure| &figure.shapes);
    texts.extend(shapes.filter_map(|shape| match shape {
        Shape::Words(words) => Some(words.text.as_str()),
        Shape::Path(_) | Shape::Picture(_) => None,
    }));
    let characters: BTreeSet<char> = texts
        .iter()
        .flat_map(|text| text.chars())
        .filter(|character| !matches!(character, '\n' | '\t' | '\r'))
        .collect();
    let mut missing = uncovered(Face::Regular, &characters);
    for other in uncovered(Face::Bold, &characters) {
        if missing.iter().all(|one| one.character != other.character) {
            missing.push(other);
        }
    }
    if missing.is_empty() {
        return Ok(());
    }
    Err(LayoutError::Unshapable(
        missing
            .into_iter()
            .map(|one| {
                let text = texts.iter().find(|text| text.contains(one.character));
                (one, text.map_or_else(String::new, |&text| text.to_owned()))
            })
            .collect(),
    ))
}

/// Versions taken, by the name of their `Fit`.
type Fits = BTreeMap<String, usize>;

/// Shows every rich text of a document to `look`; with `fits`, only what is on its pages.
pub(super) fn each<'a>(flow: &'a Flow, fits: Option<&Fits>, look: &mut dyn FnMut(&'a Rich)) {
    if let Some(band) = &flow.band {
        all([&band.words, &band.beside], look);
    }
    for text in [&flow.running_head, &flow.first_foot, &flow.foot]
        .into_iter()
        .flatten()
    {
        look(text);
    }
    blocks(&flow.blocks, fits, look);
}

fn all<'a>(rows: impl IntoIterator<Item = &'a Rich>, look: &mut dyn FnMut(&'a Rich)) {
    for row in rows {
        look(row);
    }
}

fn blocks<'a>(list: &'a [Block], fits: Option<&Fits>, look: &mut dyn FnMut(&'a Rich)) {
    for block in list {
        match block {
            Block::Heading { text, .. } | Block::Paragraph { text, .. } => look(text),
            Block::List(rows) => all(rows, look),
            Block::Terms(terms) => {
                for (word, text) in &terms.rows {
                    all([word, text], look);
                }
            }
            Block::Table(table) => {
                all(table.head.iter().flatten(), look);
                let cells = table.rows.iter().flat_map(|row| &row.cells);
                all(cells.flat_map(Cell::words), look);
            }
            Block::Columns(columns) => {
                for column in columns {
                    blocks(&column.blocks, fits, look);
                }
            }
            Block::Section(section) => blocks(&section.blocks, fits, look),
            Block::Ticks(groups) => {
                for group in groups {
                    look(&group.question);
                    all(&group.joined_by, look);
                    if let Some((adds, total)) = &group.heads {
                        all([adds, total], look);
                    }
                    for item in &group.items {
                        all(
                            [&item.title, &item.description, &item.adds, &item.total],
                            look,
                        );
                    }
                }
            }
            Block::Fields(fields) => {
                for field in fields {
                    look(&field.under);
                    all(field.over.iter().map(|over| &over.text), look);
                }
            }
            Block::Fit { name, versions } => {
                let taken = fits.and_then(|fits| fits.get(name));
                for (at, version) in versions.iter().enumerate() {
                    if taken.is_none_or(|taken| *taken == at) {
                        blocks(version, fits, look);
                    }
                }
            }
            Block::When {
                fit,
                version,
                blocks: inner,
            } => {
                let taken = fits.and_then(|fits| fits.get(fit));
                if taken.is_none_or(|taken| taken == version) {
                    blocks(inner, fits, look);
                }
            }
            Block::Flows(inner) | Block::Keep(inner) => blocks(inner, fits, look),
            Block::Figure { .. }
            | Block::Space(_)
            | Block::Rule(_)
            | Block::NewPage
            | Block::Anchor(_) => {}
        }
    }
}
