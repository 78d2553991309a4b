//! The small XML vocabulary of templates, read into blocks.
//!
//! Element names are those of HTML where the meaning is the same; the others
//! (`columns`, `flows`, `ticks`, `fields`, `fit`, …) say what HTML cannot.
//! Anything unknown is an error with its line and column, never skipped.
//! DEVELOPERS.md and `templates/` show it in use.

mod blocks;
mod error;
mod forms;
mod inline;
mod node;
mod table;

pub use error::{MarkupError, Wrong};

use crate::press::layout::block::Flow;
use node::Element;

/// Reads a whole document.
pub fn read(text: &str) -> Result<Flow, MarkupError> {
    let parsed = roxmltree::Document::parse(text).map_err(|error| MarkupError {
        line: error.pos().row,
        column: error.pos().col,
        wrong: Wrong::Xml(error.to_string()),
    })?;
    let root = Element::new(parsed.root_element());
    root.expect("document")?;
    root.allow(&[])?;
    let mut flow = Flow::default();
    for part in root.children()? {
        match part.name() {
            "head" => {
                part.allow(&[])?;
                flow.running_head = Some(inline::rich(part)?);
            }
            "foot" => {
                part.allow(&["page"])?;
                let place = part.choice("page", &[("first", true), ("later", false)], false)?;
                let text = Some(inline::rich(part)?);
                if place {
                    flow.first_foot = text;
                } else {
                    flow.foot = text;
                }
            }
            "pages" => {
                part.allow(&[])?;
                flow.page_number = Some(part.words()?);
            }
            "body" => {
                part.allow(&[])?;
                flow.blocks = blocks::inside(part)?;
            }
            _ => return Err(part.unknown()),
        }
    }
    Ok(flow)
}

#[cfg(test)]
mod tests;
