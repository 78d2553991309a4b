//! What the file as a whole says: its language, its title, its standards, its parts.

use lopdf::{Document as Objects, Object, ObjectId, dictionary, text_string};

use super::{about, bookmarks, deflate, icc};
use crate::press::page::Document;

/// Adds all that hangs on the catalog, beside pages and structure; gives the catalog.
pub fn add(
    document: &Document,
    tree: ObjectId,
    structure: ObjectId,
    pages: &[ObjectId],
    objects: &mut Objects,
) -> ObjectId {
    let metadata = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    let metadata = deflate::stream(metadata, about::xmp(&document.about).as_bytes());
    let mut catalog = dictionary! {
        "Type" => "Catalog",
        "Pages" => tree,
        "Lang" => text_string(&document.about.language),
        "MarkInfo" => dictionary! { "Marked" => true },
        "ViewerPreferences" => dictionary! { "DisplayDocTitle" => true },
        "StructTreeRoot" => structure,
        "Metadata" => objects.add_object(metadata),
        "OutputIntents" => vec![output_intent(objects).into()],
    };
    if let Some(outline) = bookmarks::add(document, pages, objects) {
        catalog.set("Outlines", outline);
        catalog.set("PageMode", "UseOutlines");
    }
    objects.add_object(catalog)
}

fn output_intent(objects: &mut Objects) -> ObjectId {
    let profile = deflate::stream(dictionary! { "N" => 3 }, &icc::profile());
    let profile = objects.add_object(profile);
    objects.add_object(dictionary! {
        "Type" => "OutputIntent",
        "S" => "GTS_PDFA1",
        "OutputConditionIdentifier" => Object::string_literal("sRGB"),
        "Info" => Object::string_literal("sRGB (IEC 61966-2-1)"),
        "DestOutputProfile" => profile,
    })
}
