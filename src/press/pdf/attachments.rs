//! Files carried inside the document: the figures behind it, for programs to read.

use lopdf::{Document as Objects, Object, ObjectId, dictionary, text_string};

use super::{dates, deflate, numbers::integer};
use crate::press::page::{Attachment, Document};

/// Adds every file; gives names and file specifications, in the order of the names.
pub fn add(document: &Document, objects: &mut Objects) -> Vec<(Object, ObjectId)> {
    // A name tree is searched by halves, so it must be sorted.
    let mut sorted: Vec<&Attachment> = document.attachments.iter().collect();
    sorted.sort_by(|one, other| one.name.cmp(&other.name));
    sorted
        .into_iter()
        .map(|attachment| {
            let file = specification(attachment, document.about.created, objects);
            (text_string(&attachment.name), file)
        })
        .collect()
}

fn specification(attachment: &Attachment, created: i64, objects: &mut Objects) -> ObjectId {
    let Attachment {
        name,
        description,
        media_type,
        bytes,
    } = attachment;
    let file = dictionary! {
        "Type" => "EmbeddedFile",
        "Subtype" => media_type.as_str(),
        "Params" => dictionary! {
            "Size" => integer(bytes.len()),
            "ModDate" => Object::string_literal(dates::in_info(created)),
        },
    };
    let file = objects.add_object(deflate::stream(file, bytes));
    objects.add_object(dictionary! {
        "Type" => "Filespec",
        "F" => text_string(name),
        "UF" => text_string(name),
        "Desc" => text_string(description),
        "AFRelationship" => "Data",
        "EF" => dictionary! { "F" => file, "UF" => file },
    })
}
