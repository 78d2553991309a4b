//! From a document to the bytes of its PDF, or the problem that keeps it from being set.

use crate::documents::DocumentError;
use crate::press::page::Document;
use crate::press::pdf;
use crate::reading::{Problem, Problems, Read};

pub fn pdf_bytes(
    document: Result<Document, DocumentError>,
    problems: &mut Problems,
) -> Read<Vec<u8>> {
    let document = document.map_err(|error| {
        problems.push(
            Problem::new("cannot-set-page", error.to_string())
                .help("write it with letters of the bundled face, or shorter"),
        )
    })?;
    Ok(pdf::write(&document))
}
