//! The way from blocks to a finished document.

use super::block::Flow;
use super::compose::{Composer, Place, SetLines};
use super::error::LayoutError;
use super::fill::{Filled, Settled, fill};
use super::running::running;
use super::style::{Look, grid};
use super::texts::{check, each};
use crate::press::drawing::Drawing;
use crate::press::page::{About, Document, Node, NodeId, Owner, Page, StructureRole};
use crate::press::text::{Rich, Span};
use std::collections::{BTreeMap, BTreeSet};

/// Attempts until page numbers and fitting versions agree with the pages made from them.
const ATTEMPTS: usize = 6;

/// Lays out a document; figures are found by name.
pub fn paginate(
    flow: &Flow,
    figures: &BTreeMap<String, Drawing>,
    look: &Look,
    about: About,
) -> Result<Document, LayoutError> {
    check(flow, figures)?;
    let mut settled = Settled::default();
    let known = SetLines::default();
    for _ in 0..ATTEMPTS {
        let mut composer = Composer {
            look,
            figures,
            settled: &settled,
            nodes: Vec::new(),
            known: &known,
        };
        let root = composer.node(StructureRole::Document, None);
        let place = Place {
            parent: root,
            x: grid::LEFT,
            width: grid::RIGHT - grid::LEFT,
        };
        let pieces = composer.blocks(place, &flow.blocks)?;
        let tops = match (&flow.band, &flow.running_head) {
            (Some(_), None) => [grid::UNDER_BAND; 2],
            (Some(_), Some(_)) => [grid::UNDER_BAND, grid::UNDER_HEAD],
            (None, _) => [grid::TOP, grid::UNDER_HEAD],
        };
        let filled = fill(pieces, tops)?;
        if filled.settled == settled {
            for name in wanted(flow, &settled) {
                if !settled.pages.contains_key(&name) {
                    return Err(LayoutError::UnknownPart { name });
                }
            }
            return finish(composer, flow, filled, about);
        }
        settled = filled.settled;
    }
    Err(LayoutError::Unsettled)
}

fn finish(
    composer: Composer<'_>,
    flow: &Flow,
    filled: Filled,
    about: About,
) -> Result<Document, LayoutError> {
    let count = filled.pages.len();
    let mut pages = Vec::new();
    for (at, marks) in filled.pages.into_iter().enumerate() {
        let (mut all, after) = running(&composer, flow, at, count)?;
        all.extend(marks);
        all.extend(after);
        pages.push(Page {
            size: grid::PAGE,
            marks: all,
        });
    }
    let mut nodes = composer.nodes;
    for (node, page, bounds) in filled.bounds {
        nodes[node.0].bounds = Some((page, bounds));
    }
    let unused: BTreeSet<usize> = filled.unused.into_iter().flatten().collect();
    let structure = without(nodes, &unused, &mut pages);
    let count = structure
        .iter()
        .filter(|node| node.role == StructureRole::Heading(1))
        .count();
    if count != 1 {
        return Err(LayoutError::Headings { count });
    }
    Ok(Document {
        pages,
        structure,
        outline: filled.outline,
        about,
    })
}

/// Drops nodes of versions not taken, and renumbers the others.
fn without(nodes: Vec<Node>, unused: &BTreeSet<usize>, pages: &mut [Page]) -> Vec<Node> {
    let mut numbers = BTreeMap::new();
    let mut kept = Vec::new();
    for (at, mut node) in nodes.into_iter().enumerate() {
        if unused.contains(&at) {
            continue;
        }
        node.parent = node
            .parent
            .and_then(|parent| numbers.get(&parent.0).copied());
        numbers.insert(at, NodeId(kept.len()));
        kept.push(node);
    }
    for mark in pages.iter_mut().flat_map(|page| &mut page.marks) {
        if let Owner::Node(node) = &mut mark.owner {
            *node = numbers[&node.0];
        }
    }
    kept
}

/// All parts whose page numbers are asked for on the pages.
fn wanted(flow: &Flow, settled: &Settled) -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    each(flow, Some(&settled.fits), &mut |text: &Rich| {
        for span in &text.0 {
            match span {
                Span::PageOf(name, _) => {
                    names.insert(name.clone());
                }
                Span::Text(..) => {}
            }
        }
    });
    names
}
