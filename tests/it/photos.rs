//! Photos of a takeoff: those with words after them stand in the quote, silent about their taking.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The quote of a small job with these photos; the folder holds the demo firm and `photo.jpg`.
fn quoted(name: &str, photos: &str) -> (Output, PathBuf) {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let business = std::fs::read_to_string(root().join("demo-quotes/business.yaml")).unwrap();
    let book = root().join("price-books/river-road.yaml");
    let business = business.replace("../price-books/river-road.yaml", book.to_str().unwrap());
    std::fs::write(folder.join("business.yaml"), business).unwrap();
    std::fs::copy(
        root().join("tests/it/pdf/photo.jpg"),
        folder.join("photo.jpg"),
    )
    .unwrap();
    std::fs::write(folder.join("torn.jpg"), b"\xFF\xD8\xFF\xE0 and no more").unwrap();
    let job = format!(
        "customer: Ira Sample, 7 Ferry Steps, Quillhaven\nslabs: {{walk: 28 ft x 4 ft}}\n{photos}\n"
    );
    let path = folder.join("job.yaml");
    std::fs::write(&path, job).unwrap();
    let output = Command::new(env!("CARGO_BIN_EXE_flatwork"))
        .args(["quote", path.to_str().unwrap(), "--on", "2026-05-04"])
        .output()
        .unwrap();
    (output, folder.join("job.pdf"))
}

/// Pictures in the file; their dictionaries may be packed, but the data of a JPEG never is.
fn pictures(pdf: &[u8]) -> usize {
    pdf.windows(4)
        .filter(|part| *part == b"\xFF\xD8\xFF\xE0")
        .count()
}

fn holds(bytes: &[u8], text: &str) -> bool {
    bytes
        .windows(text.len())
        .any(|part| part == text.as_bytes())
}

#[test]
fn a_photo_with_words_stands_in_the_quote_and_tells_no_place() {
    let of_camera = std::fs::read(root().join("tests/it/pdf/photo.jpg")).unwrap();
    assert!(holds(&of_camera, "12 Private Lane"));
    let (output, path) = quoted(
        "photos-shown",
        "photos: [photo.jpg: The gate we come through]",
    );
    assert!(output.status.success(), "{output:?}");
    let pdf = std::fs::read(path).unwrap();
    assert_eq!(pictures(&pdf), 1);
    assert!(!holds(&pdf, "12 Private Lane"));
    assert!(!holds(&pdf, "private remark"));
}

#[test]
fn a_photo_without_words_stays_in_the_office() {
    let (output, path) = quoted("photos-kept", "photos: [photo.jpg]");
    assert!(output.status.success(), "{output:?}");
    assert_eq!(pictures(&std::fs::read(path).unwrap()), 0);
}

#[test]
fn a_photo_that_cannot_be_read_is_named_and_nothing_is_written() {
    let (output, path) = quoted("photos-torn", "photos: [torn.jpg: The wall]");
    assert_eq!(output.status.code(), Some(1));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(said.contains("error[unreadable-picture]"), "{said}");
    assert!(said.contains("save it as a JPEG picture"), "{said}");
    assert!(!path.exists());
}
