//! What people write on: boxes to tick, lines to sign.

use super::error::MarkupError;
use super::inline;
use super::node::Element;
use super::values::{ALIGNS, STYLES};
use crate::press::layout::block::{Align, Block, Field, Over, TickGroup, TickItem};
use crate::press::layout::style::Style;
use crate::press::text::Rich;

/// `ticks` hold `group`s; a group has a `question` and `tick`s.
pub(super) fn ticks(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["id", "adds", "total"])?;
    let heads = match (element.attribute("adds"), element.attribute("total")) {
        (Some(adds), Some(total)) => Some((Rich::plain(adds), Rich::plain(total))),
        _ => None,
    };
    let mut groups = Vec::new();
    for child in element.children()? {
        child.expect("group")?;
        child.allow(&["joined-by"])?;
        let mut group = TickGroup {
            question: Rich::default(),
            joined_by: child.attribute("joined-by").map(Rich::plain),
            heads: heads.clone().filter(|_| groups.is_empty()),
            items: Vec::new(),
        };
        for part in child.children()? {
            part.allow(&[])?;
            match part.name() {
                "question" => group.question = inline::rich(part)?,
                "tick" => group.items.push(tick(part)?),
                _ => return Err(part.unknown()),
            }
        }
        groups.push(group);
    }
    Ok(Block::Ticks(groups))
}

fn tick(element: Element<'_>) -> Result<TickItem, MarkupError> {
    let mut item = TickItem {
        title: Rich::default(),
        description: Rich::default(),
        adds: Rich::default(),
        total: Rich::default(),
    };
    for part in element.children()? {
        part.allow(&[])?;
        let text = inline::rich(part)?;
        match part.name() {
            "title" => item.title = text,
            "description" => item.description = text,
            "adds" => item.adds = text,
            "total" => item.total = text,
            _ => return Err(part.unknown()),
        }
    }
    Ok(item)
}

/// `fields` stand in one row; a `field` may have words `over` and `under` its line.
pub(super) fn fields(element: Element<'_>) -> Result<Block, MarkupError> {
    element.allow(&["id"])?;
    let mut fields = Vec::new();
    for child in element.children()? {
        child.expect("field")?;
        child.allow(&["span", "line"])?;
        let mut field = Field {
            span: child.count("span", 12, 6)?,
            line: child.choice("line", &[("yes", true), ("no", false)], true)?,
            over: None,
            under: Rich::default(),
        };
        for part in child.children()? {
            match part.name() {
                "over" => {
                    part.allow(&["style", "align"])?;
                    field.over = Some(Over {
                        style: part.choice("style", &STYLES, Style::Body)?,
                        align: part.choice("align", &ALIGNS, Align::Left)?,
                        text: inline::rich(part)?,
                    });
                }
                "under" => {
                    part.allow(&[])?;
                    field.under = inline::rich(part)?;
                }
                _ => return Err(part.unknown()),
            }
        }
        fields.push(field);
    }
    Ok(Block::Fields(fields))
}
