//! The small XML vocabulary of templates, read into blocks.
//!
//! Element names are those of HTML where the meaning is the same; the others
//! (`columns`, `flows`, `ticks`, `fields`, `fit`, …) say what HTML cannot.
//! Anything unknown is an error with its line and column, never skipped.
//!
//! | element | holds | attributes |
//! |---|---|---|
//! | `document` | `band`, `head`, `foot`, `pages`, `body` | |
//! | `band` | words on ink at the head of every page, in place of the accent mark | `beside` |
//! | `head`, `foot`, `pages` | running words; `Page {n} of {m}` | `foot page="first"` |
//! | `h1` (once) `h2` `h3` | words | `style` `gap` |
//! | `p` | words | `style` `ink` `gap` `keep="with-next"` |
//! | `ul` | `li` | |
//! | `dl` | `dt`, `dd` in turn | `width` `voice` `gap` |
//! | `table` | `col`, then `thead`, `tbody` of `tr` of `th`, `td` | `head="beside-title"` `rows="close"`; `col width align voice`; `tr kind` `group`, `sum` or `total`; a `td` holds words, or `p`s and `figure`s one under the other |
//! | `section` | blocks | `rule` |
//! | `columns` | `column`s of blocks | `column span` of 12 |
//! | `flows` | blocks, in two flows | |
//! | `ticks` | `group` of `question`, `tick` of `title`, `description`, `adds`, `total` | `adds` `total`; `group joined-by` |
//! | `fields` | `field` of `over`, `under` | `field span line`; `over style align` |
//! | `figure` | | `name` |
//! | `fit` | `version`s, of which the first that fits is taken | `name` |
//! | `when` | blocks that stand only with that version | `fit` `version` from 0 |
//! | `keep`, `newpage`, `space`, `hr` | | `half-lines`; `rule` |
//! | `b`, `small` | words in bold, in the soft voice | |
//!
//! Blocks may have an `id`; `{page:id}` in any words prints the number of its page.

mod blocks;
mod error;
mod forms;
mod inline;
mod node;
mod table;
mod values;

pub use error::{MarkupError, Wrong};

use crate::press::layout::block::{Band, Flow};
use crate::press::text::Rich;
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
            "band" => {
                part.allow(&["beside"])?;
                flow.band = Some(Band {
                    words: inline::rich(part)?,
                    beside: Rich::plain(part.attribute("beside").unwrap_or_default()),
                });
            }
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
