//! The PDF writer, read back by another road: the finished bytes.

mod sample;

use flatwork::press::pdf;

/// Kept where the validators of `tests/oracle` look for it.
#[test]
fn the_sample_is_written() {
    let bytes = pdf::write(&sample::document());
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR"));
    std::fs::write(folder.join("sample.pdf"), &bytes).unwrap();
    assert!(bytes.starts_with(b"%PDF-1.7\n"));
}
