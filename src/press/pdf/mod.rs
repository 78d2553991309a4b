//! Placed marks to the bytes of a PDF that keeps PDF/A-3a and PDF/UA-1.
//!
//! Marks become page content in one step (`content`), and lopdf holds the objects. Lengths are
//! points; `page::Document` has y downward and PDF has y upward, turned round in that step. No
//! clock, no random number, no shared counter: the same document gives the same bytes, and
//! writing cannot fail.

mod about;
mod attributes;
mod bookmarks;
mod catalog;
mod content;
mod dates;
mod deflate;
mod file;
mod fonts;
mod icc;
mod kids;
mod metrics;
mod numbers;
mod picture;
mod pictures;
mod roles;
mod structure;
mod to_unicode;

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary};

use self::{content::WrittenPage, fonts::Fonts, pictures::Pictures, structure::Placed};
use super::page::{Document, Page};

pub use self::picture::Jpeg;

/// Writes a document. Every picture in it must have passed [`Jpeg::read`].
pub fn write(document: &Document) -> Vec<u8> {
    let mut objects = Objects::with_version("1.7");
    let (mut fonts, mut pictures) = (Fonts::default(), Pictures::default());
    let written: Vec<WrittenPage> = document
        .pages
        .iter()
        .map(|page| content::write(page, &document.structure, &mut fonts, &mut pictures))
        .collect();
    let tree = objects.new_object_id();
    let pages: Vec<ObjectId> = document
        .pages
        .iter()
        .map(|_| objects.new_object_id())
        .collect();
    let resources =
        dictionary! { "Font" => fonts.add(&mut objects), "XObject" => pictures.add(&mut objects) };
    let resources = objects.add_object(resources);
    for (index, page) in document.pages.iter().enumerate() {
        let content = deflate::stream(Dictionary::new(), &written[index].content);
        let content = objects.add_object(content);
        let mut leaf = leaf(page, index);
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
        written: &written,
    };
    let structure = structure::add(document, &placed, &mut objects);
    let root = catalog::add(document, tree, structure, &pages, &mut objects);
    let info = objects.add_object(about::info(&document.about));
    objects.trailer.set("Root", root);
    objects.trailer.set("Info", info);
    file::write(objects)
}

/// A page without what other objects it names.
fn leaf(page: &Page, index: usize) -> Dictionary {
    dictionary! {
        "Type" => "Page",
        "MediaBox" => numbers::numbers([0.0, 0.0, page.size.width, page.size.height]),
        "StructParents" => numbers::integer(index),
        "Tabs" => "S",
    }
}
