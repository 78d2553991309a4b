//! What the file says of itself, in XML, and equal to what its Info dictionary says.

use super::{catalog::PROGRAM, dates};
use crate::press::page::About;

/// The XMP packet: Dublin Core, dates, and the two standards the file keeps.
pub fn packet(about: &About) -> String {
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
