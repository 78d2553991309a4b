//! Words, with a bold or a soft voice among them and page numbers to be filled in.

use super::error::MarkupError;
use super::node::{Element, Mixed};
use crate::press::text::{Rich, Span, Voice};

pub(super) fn rich(element: Element<'_>) -> Result<Rich, MarkupError> {
    let mut text = Rich::default();
    add(&mut text, element, Voice::Plain)?;
    Ok(text)
}

fn add(text: &mut Rich, element: Element<'_>, voice: Voice) -> Result<(), MarkupError> {
    for part in element.mixed() {
        match part {
            Mixed::Text(words) => pages(&mut text.0, words, voice),
            Mixed::Element(inner) => {
                inner.allow(&[])?;
                match inner.name() {
                    "b" => add(text, inner, Voice::Bold)?,
                    "small" => add(text, inner, Voice::Soft)?,
                    _ => return Err(inner.unknown()),
                }
            }
        }
    }
    Ok(())
}

/// Splits at every `{page:name}`.
fn pages(spans: &mut Vec<Span>, words: &str, voice: Voice) {
    const OPEN: &str = "{page:";
    let mut rest = words;
    while let Some(at) = rest.find(OPEN) {
        let after = &rest[at + OPEN.len()..];
        let Some(end) = after.find('}') else { break };
        if 0 < at {
            spans.push(Span::Text(rest[..at].to_owned(), voice));
        }
        spans.push(Span::PageOf(after[..end].to_owned(), voice));
        rest = &after[end + 1..];
    }
    if !rest.is_empty() {
        spans.push(Span::Text(rest.to_owned(), voice));
    }
}
