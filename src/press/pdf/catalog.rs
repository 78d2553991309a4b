//! What the file as a whole says: its language, its title, its standards, its parts.

use lopdf::{Dictionary, Document as Objects, Object, ObjectId, dictionary, text_string};

use super::{attachments, bookmarks, dates, deflate, icc, xmp};
use crate::press::page::{About, Document};

/// Who made the file; the version is part of it, since another one may set pages otherwise.
pub const PROGRAM: &str = concat!(env!("CARGO_PKG_NAME"), " ", env!("CARGO_PKG_VERSION"));

/// Adds all that hangs on the catalog, beside pages and structure; gives the catalog.
pub fn add(
    document: &Document,
    tree: ObjectId,
    structure: ObjectId,
    pages: &[ObjectId],
    objects: &mut Objects,
) -> ObjectId {
    let metadata = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    let metadata = deflate::stream(metadata, xmp::packet(&document.about).as_bytes());
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
    let files = attachments::add(document, objects);
    if !files.is_empty() {
        let associated: Vec<Object> = files.iter().map(|(_, file)| (*file).into()).collect();
        let named: Vec<Object> = files
            .into_iter()
            .flat_map(|(name, file)| [name, file.into()])
            .collect();
        catalog.set(
            "Names",
            dictionary! { "EmbeddedFiles" => dictionary! { "Names" => named } },
        );
        catalog.set("AF", associated);
    }
    objects.add_object(catalog)
}

/// The older of the two places where a file names itself; it must say what XMP says.
pub fn info(about: &About) -> Dictionary {
    let created = Object::string_literal(dates::in_info(about.created));
    dictionary! {
        "Title" => text_string(&about.title),
        "Author" => text_string(&about.author),
        "Subject" => text_string(&about.subject),
        "Creator" => text_string(PROGRAM),
        "Producer" => text_string(PROGRAM),
        "CreationDate" => created.clone(),
        "ModDate" => created,
    }
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
