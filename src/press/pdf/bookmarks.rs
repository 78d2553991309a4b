//! The outline a viewer shows beside the pages.

use lopdf::{Document as Objects, Object, ObjectId, dictionary, text_string};

use super::numbers::{integer, number};
use crate::press::page::{Bookmark, Document};

/// Adds the outline; `None` when the document has no bookmarks.
pub fn add(document: &Document, pages: &[ObjectId], objects: &mut Objects) -> Option<ObjectId> {
    if document.outline.is_empty() {
        return None;
    }
    let root = objects.new_object_id();
    let ids: Vec<ObjectId> = document
        .outline
        .iter()
        .map(|_| objects.new_object_id())
        .collect();
    let parents = parents(&document.outline);
    for (index, bookmark) in document.outline.iter().enumerate() {
        let height = document.pages[bookmark.page].size.height;
        let parent = parents[index].map_or(root, |parent| ids[parent]);
        let mut item = dictionary! {
            "Title" => text_string(&bookmark.title),
            "Parent" => parent,
            "Dest" => vec![pages[bookmark.page].into(), "XYZ".into(), Object::Null, number(height - bookmark.y), Object::Null],
        };
        let siblings = children(&parents, parents[index]);
        let place = siblings
            .iter()
            .position(|sibling| *sibling == index)
            .expect("it is its parent's child");
        if let Some(before) = place.checked_sub(1) {
            item.set("Prev", ids[siblings[before]]);
        }
        if let Some(next) = siblings.get(place + 1) {
            item.set("Next", ids[*next]);
        }
        ends(
            &mut item,
            &children(&parents, Some(index)),
            below(&parents, index),
            &ids,
        );
        objects.set_object(ids[index], item);
    }
    let mut outline = dictionary! { "Type" => "Outlines" };
    ends(&mut outline, &children(&parents, None), ids.len(), &ids);
    objects.set_object(root, outline);
    Some(root)
}

/// First and last child, and how many are open below: all of them.
fn ends(item: &mut lopdf::Dictionary, children: &[usize], below: usize, ids: &[ObjectId]) {
    if let (Some(first), Some(last)) = (children.first(), children.last()) {
        item.set("First", ids[*first]);
        item.set("Last", ids[*last]);
        item.set("Count", integer(below));
    }
}

/// The last bookmark before it with a lower level, so a skipped level does no harm.
fn parents(outline: &[Bookmark]) -> Vec<Option<usize>> {
    let above = |index: usize| {
        outline[..index]
            .iter()
            .rposition(|other| other.level < outline[index].level)
    };
    (0..outline.len()).map(above).collect()
}

fn children(parents: &[Option<usize>], parent: Option<usize>) -> Vec<usize> {
    (0..parents.len())
        .filter(|child| parents[*child] == parent)
        .collect()
}

fn below(parents: &[Option<usize>], index: usize) -> usize {
    children(parents, Some(index))
        .into_iter()
        .map(|child| 1 + below(parents, child))
        .sum()
}

#[cfg(test)]
mod tests {
    use super::{Bookmark, below, children, parents};

    #[test]
    fn chapters_are_siblings_and_a_skipped_level_does_no_harm() {
        let outline: Vec<Bookmark> = [0, 2, 1, 0, 1]
            .map(|level| Bookmark {
                title: String::new(),
                level,
                page: 0,
                y: 0.0,
            })
            .into();
        let parents = parents(&outline);
        assert_eq!(parents, [None, Some(0), Some(0), None, Some(3)]);
        assert_eq!(children(&parents, None), [0, 3]);
        assert_eq!(children(&parents, Some(0)), [1, 2]);
        assert_eq!(below(&parents, 0), 2);
    }
}
