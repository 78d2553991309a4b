//! The objects to a file: object streams, a deflated index, an identity made of the content.

use lopdf::{Dictionary, Document as Objects, Object, SaveOptions};
use sha2::{Digest, Sha256};

use super::{deflate::deflate, numbers::hexadecimal};

/// Writes the file; the trailer must hold `Root` and `Info` only.
pub fn write(mut objects: Objects) -> Vec<u8> {
    let options = SaveOptions::builder()
        .use_object_streams(true)
        .use_xref_streams(true)
        .max_objects_per_stream(1000)
        .compression_level(6)
        .build();
    let mut bytes = Vec::new();
    objects
        .save_with_options(&mut bytes, options)
        .expect("memory takes every byte written to it");
    with_deflated_index(bytes, &objects.trailer)
}

/// lopdf leaves the index (ISO 32000-1, 7.5.8) plain and the file without an identity.
/// Everything before the index stays; the index and what follows are written anew.
fn with_deflated_index(mut bytes: Vec<u8>, trailer: &Dictionary) -> Vec<u8> {
    let count = entry(trailer, b"Size");
    let length = entry(trailer, b"Length");
    let start = last_index(&bytes);
    let content = find(&bytes[start..], b"stream\n") + start + b"stream\n".len();
    let mut rows = vec![FREE];
    rows.extend(
        bytes[content..content + length]
            .chunks_exact(ROW)
            .map(|row| <[u8; ROW]>::try_from(row).expect("rows are whole")),
    );
    assert_eq!(
        rows.len(),
        count,
        "the index must have a row for every object"
    );
    bytes.truncate(start);
    // Same content, same identity: it must not come from a clock or a random number.
    let identity = hexadecimal(&Sha256::digest(&bytes)[..16]);
    let index = deflate(&up_predicted(&rows));
    let head = format!(
        "{} 0 obj\n<</Type/XRef/Size {count}/W[1 4 2]/Root {}/Info {}/ID[<{identity}><{identity}>]\
         /Filter/FlateDecode/DecodeParms<</Predictor 12/Columns {ROW}>>/Length {}>>stream\n",
        count - 1,
        reference(trailer, b"Root"),
        reference(trailer, b"Info"),
        index.len(),
    );
    bytes.extend(head.as_bytes());
    bytes.extend(index);
    bytes.extend(format!("\nendstream\nendobj\nstartxref\n{start}\n%%EOF\n").as_bytes());
    bytes
}

/// One byte of kind, four of place, two of generation or number inside an object stream.
const ROW: usize = 7;
/// Object 0, which every file has and none uses.
const FREE: [u8; ROW] = [0, 0, 0, 0, 0, 0xFF, 0xFF];
/// `endobj`, `startxref`, its number and `%%EOF`, with room.
const TAIL_LENGTH_LIMIT: usize = 60;

/// The PNG predictor "up": each row as its difference from the one above, which packs well.
fn up_predicted(rows: &[[u8; ROW]]) -> Vec<u8> {
    let mut above = [0; ROW];
    let mut predicted = Vec::with_capacity(rows.len() * (ROW + 1));
    for row in rows {
        predicted.push(2);
        predicted.extend(
            row.iter()
                .zip(above)
                .map(|(byte, above)| byte.wrapping_sub(above)),
        );
        above = *row;
    }
    predicted
}

/// Where lopdf says its index starts.
fn last_index(bytes: &[u8]) -> usize {
    let mark = b"startxref\n";
    let from = bytes.len().saturating_sub(TAIL_LENGTH_LIMIT);
    let digits = find(&bytes[from..], mark) + from + mark.len();
    let digits = bytes[digits..]
        .iter()
        .take_while(|byte| byte.is_ascii_digit());
    digits.fold(0, |number, digit| number * 10 + usize::from(digit - b'0'))
}

fn find(bytes: &[u8], mark: &[u8]) -> usize {
    let place = bytes.windows(mark.len()).position(|window| window == mark);
    place.expect("lopdf ends its files in one way only")
}

fn entry(trailer: &Dictionary, key: &[u8]) -> usize {
    let number = trailer.get(key).and_then(Object::as_i64).ok();
    number
        .and_then(|number| usize::try_from(number).ok())
        .expect("lopdf writes this entry")
}

fn reference(trailer: &Dictionary, key: &[u8]) -> String {
    let (id, generation) = trailer
        .get(key)
        .and_then(Object::as_reference)
        .expect("the trailer holds it");
    format!("{id} {generation} R")
}
