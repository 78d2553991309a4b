//! What each element holds, in reading order.

use super::content::WrittenPage;
use crate::press::page::{Document, NodeId};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kid {
    Element(NodeId),
    /// Marked content, by its number on its page.
    Content {
        page: usize,
        mcid: usize,
    },
}

/// Page, then number of the mark on it.
type Position = (usize, usize);

/// The kids of every node. Elements stand in the order of their nodes; an element's own
/// content stands before the first element whose content comes later on the pages.
pub fn by_node(document: &Document, pages: &[WrittenPage]) -> Vec<Vec<Kid>> {
    let own = own_kids(document, pages);
    let first = first_positions(document, &own);
    let mut elements: Vec<Vec<usize>> = vec![Vec::new(); document.structure.len()];
    for (index, node) in document.structure.iter().enumerate() {
        if let Some(parent) = node.parent {
            elements[parent.0].push(index);
        }
    }
    own.into_iter()
        .zip(elements)
        .map(|(own, elements)| merged(own, &elements, &first))
        .collect()
}

fn merged(own: Vec<(Position, Kid)>, elements: &[usize], first: &[Option<Position>]) -> Vec<Kid> {
    let mut own = own.into_iter().peekable();
    let mut kids = Vec::new();
    for &element in elements {
        while let Some((_, kid)) =
            own.next_if(|(position, _)| first[element].is_some_and(|first| *position < first))
        {
            kids.push(kid);
        }
        kids.push(Kid::Element(NodeId(element)));
    }
    kids.extend(own.map(|(_, kid)| kid));
    kids
}

/// Content that belongs to a node itself, not to a node below it.
fn own_kids(document: &Document, pages: &[WrittenPage]) -> Vec<Vec<(Position, Kid)>> {
    let mut own: Vec<Vec<(Position, Kid)>> = vec![Vec::new(); document.structure.len()];
    for (page, written) in pages.iter().enumerate() {
        for (mcid, node) in written.owners.iter().enumerate() {
            own[node.0].push(((page, mcid), Kid::Content { page, mcid }));
        }
    }
    own
}

/// Where each node is first seen, itself or anything below it.
fn first_positions(document: &Document, own: &[Vec<(Position, Kid)>]) -> Vec<Option<Position>> {
    let mut first: Vec<Option<Position>> = vec![None; own.len()];
    for (index, kids) in own.iter().enumerate() {
        let Some((position, _)) = kids.first() else {
            continue;
        };
        let mut at = Some(NodeId(index));
        while let Some(node) = at {
            let known = first[node.0].get_or_insert(*position);
            *known = (*known).min(*position);
            at = document.structure[node.0].parent;
        }
    }
    first
}
