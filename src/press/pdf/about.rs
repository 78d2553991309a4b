//! What the file says of itself, in the two places where a PDF does; they must agree.

use lopdf::{Dictionary, Object, dictionary, text_string};

use super::dates;
use crate::press::page::About;

/// Who made the file; the version is part of it, since another one may set pages otherwise.
const PROGRAM: &str = concat!(env!("CARGO_PKG_NAME"), " ", env!("CARGO_PKG_VERSION"));

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

/// The XMP packet: Dublin Core, dates, and the two standards the file keeps.
pub fn xmp(about: &About) -> String {
    let About {
        title,
        author,
        subject,
        language,
        created,
    } = about;
    let [title, author, subject, language] =
        [title, author, subject, language].map(|text| escape(text));
    let created = dates::in_xmp(*created);
    let packet = include_str!("packet.xml");
    // Values last, so that a brace in one of them is never taken for a place to fill.
    let values = [
        ("{title}", title),
        ("{author}", author),
        ("{subject}", subject),
        ("{language}", language),
        ("{created}", created),
        ("{program}", escape(PROGRAM)),
    ];
    let mut filled = String::with_capacity(packet.len() + 200);
    let mut rest = packet;
    while let Some((before, after)) = rest.split_once('{') {
        filled.push_str(before);
        let (name, after) = after
            .split_once('}')
            .expect("every place in the packet is closed");
        let (_, value) = values
            .iter()
            .find(|(place, _)| place.trim_matches(['{', '}']) == name)
            .expect("every place in the packet has a value");
        filled.push_str(value);
        rest = after;
    }
    filled + rest
}

fn escape(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
