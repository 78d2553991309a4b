//! Placed marks to the bytes of a PDF that keeps PDF/A-3a and PDF/UA-1.
//!
//! Marks become printpdf's page operations (`paint`), these become page content
//! (`emitter`), and lopdf holds the objects. Lengths are points; `page::Document` has y
//! downward and PDF has y upward, turned round where marks become operations. No clock,
//! no random number, no shared counter: the same document gives the same bytes, and
//! writing cannot fail.

mod attachments;
mod attributes;
mod bookmarks;
mod catalog;
mod dates;
mod deflate;
mod emitter;
mod file;
mod fonts;
mod icc;
mod jpeg;
mod kids;
mod links;
mod marking;
mod metrics;
mod numbers;
mod paint;
mod pen;
mod picture;
mod pictures;
mod png;
mod roles;
mod shapes;
mod structure;
mod to_unicode;
mod xmp;

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary};

use self::{fonts::Fonts, paint::Painted, pictures::Pictures, structure::Placed};
use super::page::{Document, Page};

pub use self::picture::{Picture, PictureError};

/// Writes a document. Every picture in it must have passed [`Picture::read`].
pub fn write(document: &Document) -> Vec<u8> {
    let mut objects = Objects::with_version("1.7");
    let (mut fonts, mut pictures) = (Fonts::default(), Pictures::default());
    let painted: Vec<Painted> = document
        .pages
        .iter()
        .map(|page| paint::page(page, &document.structure, &mut fonts, &mut pictures))
        .collect();
    let tree = objects.new_object_id();
    let pages: Vec<ObjectId> = document
        .pages
        .iter()
        .map(|_| objects.new_object_id())
        .collect();
    let links = links::add(document, &mut objects);
    let resources =
        dictionary! { "Font" => fonts.add(&mut objects), "XObject" => pictures.add(&mut objects) };
    let resources = objects.add_object(resources);
    for (index, page) in document.pages.iter().enumerate() {
        let content = deflate::stream(Dictionary::new(), &emitter::content(&painted[index].ops));
        let content = objects.add_object(content);
        let mut leaf = leaf(page, index, &links[index]);
        leaf.set("Parent", tree);
        leaf.set("Resources", resources);
        leaf.set("Contents", content);
        objects.set_object(pages[index], leaf);
    }
    let kids: Vec<Object> = pages.iter().map(|page| (*page).into()).collect();
    objects.set_object(
        tree,
        dictionary! {
            "Type" => "Pages", "Count" => numbers::integer(kids.len()), "Kids" => kids,
        },
    );
    let placed = Placed {
        pages: &pages,
        links: &links,
        painted: &painted,
    };
    let structure = structure::add(document, &placed, &mut objects);
    let root = catalog::add(document, tree, structure, &pages, &mut objects);
    let info = objects.add_object(catalog::info(&document.about));
    objects.trailer.set("Root", root);
    objects.trailer.set("Info", info);
    file::write(objects)
}

/// A page without what other objects it names. Tab moves through links in reading order.
fn leaf(page: &Page, index: usize, links: &[ObjectId]) -> Dictionary {
    let mut leaf = dictionary! {
        "Type" => "Page",
        "MediaBox" => numbers::numbers([0.0, 0.0, page.size.width, page.size.height]),
        "StructParents" => numbers::integer(index),
        "Tabs" => "S",
    };
    if !links.is_empty() {
        let links: Vec<Object> = links.iter().map(|link| (*link).into()).collect();
        leaf.set("Annots", links);
    }
    leaf
}
