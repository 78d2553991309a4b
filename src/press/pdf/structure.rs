//! The structure tree: what a screen reader walks instead of the page.

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary, text_string};

use super::{
    attributes,
    content::WrittenPage,
    kids::{self, Kid},
    numbers::integer,
    roles,
};
use crate::press::page::{Document, NodeId};

/// Where pages ended up in the file, by their order in the document.
pub struct Placed<'a> {
    pub pages: &'a [ObjectId],
    pub written: &'a [WrittenPage],
}

/// Adds every element; gives the root of the tree.
pub fn add(document: &Document, placed: &Placed, objects: &mut Objects) -> ObjectId {
    let root = objects.new_object_id();
    let elements: Vec<ObjectId> = document
        .structure
        .iter()
        .map(|_| objects.new_object_id())
        .collect();
    let kids = kids::by_node(document, placed.written);
    for (index, node) in document.structure.iter().enumerate() {
        let parent = node.parent.map_or(root, |parent| elements[parent.0]);
        let mut element = dictionary! {
            "Type" => "StructElem",
            "S" => roles::name(node.role),
            "P" => parent,
        };
        if let Some(alternative) = &node.alternative {
            element.set("Alt", text_string(alternative));
        }
        if let Some(attributes) = attributes::of(document, NodeId(index)) {
            element.set("A", attributes);
        }
        fill(&mut element, &kids[index], placed, &elements);
        objects.set_object(elements[index], element);
    }
    let parents = objects.add_object(parent_tree(placed.written, &elements));
    objects.set_object(
        root,
        dictionary! {
            "Type" => "StructTreeRoot",
            "K" => vec![elements[0].into()],
            "ParentTree" => parents,
            "ParentTreeNextKey" => integer(placed.pages.len()),
        },
    );
    root
}

/// The page of the first content is the element's own; content elsewhere names its page.
fn fill(element: &mut Dictionary, kids: &[Kid], placed: &Placed, elements: &[ObjectId]) {
    let own_page = kids.iter().find_map(|kid| match kid {
        Kid::Content { page, .. } => Some(*page),
        Kid::Element(_) => None,
    });
    if let Some(page) = own_page {
        element.set("Pg", placed.pages[page]);
    }
    let kids: Vec<Object> = kids
        .iter()
        .map(|kid| match *kid {
            Kid::Element(node) => elements[node.0].into(),
            Kid::Content { page, mcid } if Some(page) == own_page => integer(mcid),
            Kid::Content { page, mcid } => dictionary! {
                "Type" => "MCR", "Pg" => placed.pages[page], "MCID" => integer(mcid),
            }
            .into(),
        })
        .collect();
    if !kids.is_empty() {
        element.set("K", kids);
    }
}

/// From content back to its element: for each page, by its marks' numbers.
fn parent_tree(pages: &[WrittenPage], elements: &[ObjectId]) -> Dictionary {
    let numbered = pages.iter().enumerate().flat_map(|(key, page)| {
        let owners = page.owners.iter().map(|node| elements[node.0].into());
        [integer(key), Object::Array(owners.collect())]
    });
    dictionary! { "Nums" => numbered.collect::<Vec<Object>>() }
}
