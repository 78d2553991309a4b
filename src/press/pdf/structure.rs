//! The structure tree: what a screen reader walks instead of the page.

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary, text_string};

use super::{
    attributes,
    kids::{self, Kid},
    numbers::integer,
    paint::Painted,
    roles,
};
use crate::press::page::{Document, Node};

/// Where pages and links ended up in the file, by their order in the document.
pub struct Placed<'a> {
    pub pages: &'a [ObjectId],
    /// Page by page.
    pub links: &'a [Vec<ObjectId>],
    pub painted: &'a [Painted],
}

/// Adds every element; gives the root of the tree.
pub fn add(document: &Document, placed: &Placed, objects: &mut Objects) -> ObjectId {
    let root = objects.new_object_id();
    let elements: Vec<ObjectId> = document
        .structure
        .iter()
        .map(|_| objects.new_object_id())
        .collect();
    let kids = kids::by_node(document, placed);
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
        if let Some(attributes) = attributes::of(document, index, placed.painted) {
            element.set("A", attributes);
        }
        fill(&mut element, &kids[index], placed, &elements);
        objects.set_object(elements[index], element);
    }
    let parents = objects.add_object(parent_tree(document, placed, &elements));
    objects.set_object(root, dictionary! {
        "Type" => "StructTreeRoot",
        "K" => vec![elements[0].into()],
        "ParentTree" => parents,
        "ParentTreeNextKey" => integer(placed.pages.len() + document.pages.iter().map(|page| page.links.len()).sum::<usize>()),
    });
    root
}

/// The page of the first content is the element's own; content elsewhere names its page.
fn fill(element: &mut Dictionary, kids: &[Kid], placed: &Placed, elements: &[ObjectId]) {
    let own_page = kids.iter().find_map(|kid| match kid {
        Kid::Content { page, .. } | Kid::Link { page, .. } => Some(*page),
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
            Kid::Link { page, index } => dictionary! {
                "Type" => "OBJR", "Pg" => placed.pages[page], "Obj" => placed.links[page][index],
            }
            .into(),
        })
        .collect();
    if !kids.is_empty() {
        element.set("K", kids);
    }
}

/// From content back to its element: pages first, each by its marks' numbers, then links.
fn parent_tree(document: &Document, placed: &Placed, elements: &[ObjectId]) -> Dictionary {
    let pages = placed.painted.iter().map(|page| {
        let owners = page
            .owners
            .iter()
            .map(|node| elements[node.0].into())
            .collect();
        Object::Array(owners)
    });
    let links = document
        .pages
        .iter()
        .flat_map(|page| &page.links)
        .map(|link| elements[link.node.0].into());
    let entries = pages.chain(links).enumerate();
    let numbered: Vec<Object> = entries
        .flat_map(|(key, entry)| [integer(key), entry])
        .collect();
    dictionary! { "Nums" => numbered }
}

/// Whether `node` stands below the node at `index`, which may be itself.
pub fn is_within(structure: &[Node], node: usize, index: usize) -> bool {
    let mut at = Some(node);
    while let Some(here) = at {
        if here == index {
            return true;
        }
        at = structure[here].parent.map(|parent| parent.0);
    }
    false
}
