//! Headings, paragraphs, lists, and what arranges them.

use super::error::MarkupError;
use super::node::Element;
use super::values::{INKS, RULES, STYLES, TERM_VOICES};
use super::{forms, inline, table};
use crate::press::layout::block::{Block, Column, Inking, Rule, Section, TermVoice, Terms};
use crate::press::layout::style::Style;

/// White between blocks, in half lines, unless they say otherwise.
const GAP: u8 = 1;

/// The blocks inside an element.
pub(super) fn inside(element: Element<'_>) -> Result<Vec<Block>, MarkupError> {
    let mut blocks = Vec::new();
    for child in element.children()? {
        if let Some(name) = child.attribute("id") {
            blocks.push(Block::Anchor(name.to_owned()));
        }
        blocks.push(block(child)?);
    }
    Ok(blocks)
}

fn block(element: Element<'_>) -> Result<Block, MarkupError> {
    Ok(match element.name() {
        "h1" => heading(element, 1, Style::Title)?,
        "h2" => heading(element, 2, Style::Title)?,
        "h3" => heading(element, 3, Style::Section)?,
        "p" => {
            element.allow(&["id", "style", "ink", "gap", "keep"])?;
            Block::Paragraph {
                style: element.choice("style", &STYLES, Style::Body)?,
                ink: element.choice("ink", &INKS, Inking::Ink)?,
                gap: element.count("gap", 40, GAP)?,
                keep_next: element.choice("keep", &[("with-next", true)], false)?,
                text: inline::rich(element)?,
            }
        }
        "ul" => {
            element.allow(&["id"])?;
            let mut rows = Vec::new();
            for row in element.children()? {
                row.expect("li")?;
                row.allow(&[])?;
                rows.push(inline::rich(row)?);
            }
            Block::List(rows)
        }
        "dl" => terms(element)?,
        "table" => table::read(element)?,
        "columns" => columns(element)?,
        "flows" => {
            element.allow(&["id"])?;
            Block::Flows(inside(element)?)
        }
        "section" => {
            element.allow(&["id", "rule"])?;
            Block::Section(Section {
                rule: element.choice("rule", &RULES, Rule::Thin)?,
                blocks: inside(element)?,
            })
        }
        "figure" => {
            element.allow(&["id", "name"])?;
            Block::Figure {
                name: element.required("name")?.to_owned(),
            }
        }
        "ticks" => forms::ticks(element)?,
        "fields" => forms::fields(element)?,
        "space" => {
            element.allow(&["half-lines"])?;
            Block::Space(element.count("half-lines", 60, 2)?)
        }
        "hr" => {
            element.allow(&["rule"])?;
            Block::Rule(element.choice("rule", &RULES, Rule::Thin)?)
        }
        "keep" => {
            element.allow(&["id"])?;
            Block::Keep(inside(element)?)
        }
        "newpage" => {
            element.allow(&[])?;
            Block::NewPage
        }
        "fit" => fit(element)?,
        "when" => {
            element.allow(&["fit", "version"])?;
            element.required("version")?;
            Block::When {
                fit: element.required("fit")?.to_owned(),
                version: usize::from(element.count("version", 9, 0)?),
                blocks: inside(element)?,
            }
        }
        _ => return Err(element.unknown()),
    })
}

fn heading(element: Element<'_>, level: u8, otherwise: Style) -> Result<Block, MarkupError> {
    element.allow(&["id", "style", "gap"])?;
    Ok(Block::Heading {
        level,
        style: element.choice("style", &STYLES, otherwise)?,
        gap: element.count("gap", 40, 0)?,
        text: inline::rich(element)?,
    })
}

/// A list of `dt` and `dd` in turn.
fn terms(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["id", "width", "voice", "gap"])?;
    let mut rows = Vec::new();
    let mut word = None;
    for child in element.children()? {
        child.allow(&[])?;
        match child.name() {
            "dt" => word = Some(inline::rich(child)?),
            "dd" => rows.push((word.take().unwrap_or_default(), inline::rich(child)?)),
            _ => return Err(child.unknown()),
        }
    }
    Ok(Block::Terms(Terms {
        width: element.number("width", 400, 54)?,
        voice: element.choice("voice", &TERM_VOICES, TermVoice::Bold)?,
        gap: element.count("gap", 40, GAP)?,
        rows,
    }))
}

fn columns(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["id"])?;
    let mut columns = Vec::new();
    for child in element.children()? {
        child.expect("column")?;
        child.allow(&["span"])?;
        columns.push(Column {
            span: child.count("span", 12, 6)?,
            blocks: inside(child)?,
        });
    }
    Ok(Block::Columns(columns))
}

fn fit(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["name"])?;
    let mut versions = Vec::new();
    for child in element.children()? {
        child.expect("version")?;
        child.allow(&[])?;
        versions.push(inside(child)?);
    }
    Ok(Block::Fit {
        name: element.required("name")?.to_owned(),
        versions,
    })
}
