//! Clickable areas.

use std::fmt::Write;

use lopdf::{Document as Objects, Object, ObjectId, dictionary, text_string};

use super::numbers::{integer, number, numbers};
use crate::press::page::{Document, Link};

/// Adds the links of every page, page by page. Their keys in the parent tree follow the pages'.
pub fn add(document: &Document, objects: &mut Objects) -> Vec<Vec<ObjectId>> {
    let mut key = document.pages.len()..;
    document
        .pages
        .iter()
        .map(|page| {
            let links = page.links.iter().zip(key.by_ref());
            links
                .map(|(link, key)| annotation(link, page.size.height, key, objects))
                .collect()
        })
        .collect()
}

fn annotation(link: &Link, height: f32, key: usize, objects: &mut Objects) -> ObjectId {
    let (left, top) = (link.at.x, height - link.at.y);
    let area = numbers([left, top - link.size.height, left + link.size.width, top]);
    objects.add_object(dictionary! {
        "Type" => "Annot",
        "Subtype" => "Link",
        "Rect" => area,
        "Border" => vec![number(0.0), number(0.0), number(0.0)],
        // Printed with the page.
        "F" => 4,
        "Contents" => text_string(&link.contents),
        "StructParent" => integer(key),
        "A" => dictionary! {
            "Type" => "Action",
            "S" => "URI",
            "URI" => Object::string_literal(ascii(&link.address)),
        },
    })
}

/// An address in a PDF is 7-bit; other bytes are percent-encoded (RFC 3986, 2.1).
fn ascii(address: &str) -> String {
    let mut ascii = String::with_capacity(address.len());
    for byte in address.bytes() {
        if byte.is_ascii_graphic() {
            ascii.push(char::from(byte));
        } else {
            write!(ascii, "%{byte:02X}").expect("memory takes every character written to it");
        }
    }
    ascii
}

#[cfg(test)]
mod tests {
    use super::ascii;

    #[test]
    fn addresses_are_seven_bit() {
        assert_eq!(
            ascii("https://example.com/a?b=c%20d"),
            "https://example.com/a?b=c%20d"
        );
        assert_eq!(
            ascii("https://example.com/caf\u{e9} 1"),
            "https://example.com/caf%C3%A9%201"
        );
    }
}
