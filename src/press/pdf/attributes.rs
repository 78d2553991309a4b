//! What an element says beside its contents (ISO 32000-1, 14.8.5).

use lopdf::{Dictionary, Object, dictionary};

use super::{numbers::numbers, roles};
use crate::press::page::{Document, Ink, Mark, Node, NodeId, Owner, StructureRole};

/// The attributes of a node, for the few roles that need some.
pub fn of(document: &Document, id: NodeId) -> Option<Dictionary> {
    let node = &document.structure[id.0];
    match node.role {
        StructureRole::Figure => figure(document, node),
        StructureRole::HeaderCell(scope) => {
            Some(dictionary! { "O" => "Table", "Scope" => roles::scope(scope) })
        }
        StructureRole::List => {
            Some(dictionary! { "O" => "List", "ListNumbering" => numbering(document, id) })
        }
        StructureRole::Document
        | StructureRole::Section
        | StructureRole::Heading(_)
        | StructureRole::Paragraph
        | StructureRole::ListItem
        | StructureRole::Label
        | StructureRole::ListBody
        | StructureRole::Table
        | StructureRole::TableHead
        | StructureRole::TableBody
        | StructureRole::TableRow
        | StructureRole::DataCell => None,
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
fn numbering(document: &Document, list: NodeId) -> &'static str {
    let is_label = |mark: &Mark| match mark.owner {
        Owner::Node(node) => {
            document.structure[node.0].role == StructureRole::Label
                && document.is_within(node, list)
        }
        Owner::Layout | Owner::Header | Owner::Footer => false,
    };
    let marks = || document.pages.iter().flat_map(|page| &page.marks);
    let Some(first) = marks().find(|mark| mark.ink.shows() && is_label(mark)) else {
        return "None";
    };
    let label = marks().filter(|mark| mark.owner == first.owner);
    let glyphs = label.flat_map(|mark| match &mark.ink {
        Ink::Glyphs(run) => run.glyphs.as_slice(),
        Ink::Path(_) | Ink::Picture(_) => &[],
    });
    let text: String = glyphs.map(|glyph| glyph.text.as_str()).collect();
    if text.is_empty() {
        "Square"
    } else if text.contains(|character: char| character.is_ascii_digit()) {
        "Decimal"
    } else {
        "Disc"
    }
}
