//! What an element says beside its contents (ISO 32000-1, 14.8.5).

use lopdf::{Dictionary, Object, dictionary};
use printpdf::{Op, TextItem};

use super::{numbers::numbers, paint::Painted, roles, structure};
use crate::press::page::{Document, Node, Role};

/// The attributes of the node at this index, for the few roles that need some.
pub fn of(document: &Document, index: usize, painted: &[Painted]) -> Option<Dictionary> {
    let node = &document.structure[index];
    match node.role {
        Role::Figure => figure(document, node),
        Role::HeaderCell(scope) => {
            Some(dictionary! { "O" => "Table", "Scope" => roles::scope(scope) })
        }
        Role::List => Some(
            dictionary! { "O" => "List", "ListNumbering" => numbering(document, index, painted) },
        ),
        Role::Document
        | Role::Section
        | Role::Heading(_)
        | Role::Paragraph
        | Role::ListItem
        | Role::Label
        | Role::ListBody
        | Role::Table
        | Role::TableHead
        | Role::TableBody
        | Role::TableRow
        | Role::DataCell
        | Role::Link
        | Role::Span => None,
    }
}

fn figure(document: &Document, node: &Node) -> Option<Dictionary> {
    let (page, [left, top, right, bottom]) = node.bounds?;
    let height = document.pages[page].size.height;
    Some(dictionary! {
        "O" => "Layout",
        "Placement" => "Block",
        "BBox" => Object::Array(numbers([left, height - bottom, right, height - top])),
    })
}

/// Told from the first label: digits count, other words are bullets, a drawn one is a box.
fn numbering(document: &Document, list: usize, painted: &[Painted]) -> &'static str {
    let is_label = |node: usize| {
        document.structure[node].role == Role::Label
            && structure::is_within(&document.structure, node, list)
    };
    let label = painted.iter().find_map(|page| {
        let mcid = page.owners.iter().position(|node| is_label(node.0))?;
        Some(text(page, mcid))
    });
    match label {
        None => "None",
        Some(text) if text.is_empty() => "Square",
        Some(text) if text.contains(|character: char| character.is_ascii_digit()) => "Decimal",
        Some(_) => "Disc",
    }
}

/// The words of one marked content. Artifacts carry no number, so they are passed over.
fn text(page: &Painted, mcid: usize) -> String {
    let is_element = |op: &Op| matches!(op, Op::BeginMarkedContentWithProperties { tag, .. } if tag != "Artifact");
    let starts = page.ops.iter().enumerate().filter(|(_, op)| is_element(op));
    let start = starts.map(|(at, _)| at).nth(mcid).unwrap_or(page.ops.len());
    let shown = page.ops[start..]
        .iter()
        .take_while(|op| !matches!(op, Op::EndMarkedContent));
    let glyphs = shown.filter_map(|op| match op {
        Op::ShowText { items } => Some(items),
        _ => None,
    });
    glyphs
        .flatten()
        .filter_map(|item| match item {
            TextItem::GlyphIds(glyphs) => Some(glyphs),
            _ => None,
        })
        .flatten()
        .filter_map(|glyph| glyph.cid.as_deref())
        .collect()
}
