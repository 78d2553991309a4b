//! The seal of a record: its closing checksum, and the link to the one before it.

use sha2::{Digest, Sha256};

const SEAL: &str = ",\n  \"seal\": \"";

/// SHA-256 of the bytes, as 64 lower-case digits.
pub fn hash(bytes: &[u8]) -> String {
    use std::fmt::Write as _;
    let mut text = String::with_capacity(64);
    for byte in Sha256::digest(bytes) {
        let _ = write!(text, "{byte:02x}");
    }
    text
}

/// Closes the text of a record, an object over several lines: the seal is the hash of all before it.
pub fn sealed(object: &str) -> String {
    let open = object.trim_end().trim_end_matches('}').trim_end();
    format!("{open}{SEAL}{}\"\n}}\n", hash(open.as_bytes()))
}

/// The seal of a sealed text, if it is the right one.
pub fn seal(text: &str) -> Option<&str> {
    let (before, after) = text.rsplit_once(SEAL)?;
    let seal = after.strip_suffix("\"\n}\n")?;
    (hash(before.as_bytes()) == seal).then_some(seal)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_seal_holds_until_one_byte_changes() {
        let text = sealed("{\n  \"record\": 1,\n  \"number\": \"2026-0041\"\n}\n");
        let found = seal(&text).unwrap();
        assert_eq!(found.len(), 64);
        for (at, _) in text.char_indices() {
            let mut bytes = text.clone().into_bytes();
            bytes[at] ^= 1;
            let changed = String::from_utf8(bytes).unwrap();
            assert_ne!(seal(&changed), Some(found), "byte {at}");
        }
    }

    /// FIPS 180-4's own example: the hash of `abc` (from memory).
    #[test]
    fn hashes_as_everybody_does() {
        assert_eq!(
            hash(b"abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }
}
