//! JPEG files, which a PDF takes as they are (ITU-T T.81), less what they tell of their taking.

use super::picture::{Coding, Colors, Picture};

pub(super) const START: &[u8] = b"\xFF\xD8";

/// Passes 8-bit grey or three-colour pictures; `None` means: decode it.
pub(super) fn pass(bytes: &[u8]) -> Option<Picture> {
    let mut kept = START.to_vec();
    let mut frame: Option<(usize, usize, Colors)> = None;
    let mut rest = bytes.strip_prefix(START)?;
    loop {
        let (marker, segment, after) = segment(rest)?;
        match marker {
            // Frames: baseline, extended and progressive; not C4, C8 and CC, which are none.
            0xC0..=0xC2 => frame = Some(size(segment)?),
            0xC3 | 0xC5..=0xC7 | 0xC9..=0xCB | 0xCD..=0xCF => return None,
            _ => {}
        }
        if !tells_of_its_taking(marker) {
            kept.extend(&rest[..rest.len() - after.len()]);
        }
        rest = after;
        // After the start of the scan come coded points; they end the file.
        if marker == 0xDA {
            kept.extend(rest);
            break;
        }
    }
    let (width, height, colors) = frame?;
    let is_whole = rest.windows(2).any(|pair| pair == b"\xFF\xD9");
    is_whole.then_some(Picture {
        width,
        height,
        colors,
        coding: Coding::Jpeg(kept),
        alpha: None,
    })
}

/// A photo may say in its Exif part where the customer lives and whose telephone took it.
/// Kept are JFIF (E0), the colour profile (E2) and the colour transform (EE).
fn tells_of_its_taking(marker: u8) -> bool {
    matches!(marker, 0xE1 | 0xE3..=0xED | 0xEF | 0xFE)
}

/// Width, height and colours of a frame header.
fn size(segment: &[u8]) -> Option<(usize, usize, Colors)> {
    let [8, h1, h2, w1, w2, parts, ..] = *segment else {
        return None;
    };
    let colors = match parts {
        1 => Colors::Gray,
        3 => Colors::Rgb,
        _ => return None,
    };
    let (width, height) = (
        u16::from_be_bytes([w1, w2]).into(),
        u16::from_be_bytes([h1, h2]).into(),
    );
    (0 < width && 0 < height).then_some((width, height, colors))
}

/// Marker and content of the first segment, and what follows it.
fn segment(bytes: &[u8]) -> Option<(u8, &[u8], &[u8])> {
    let [0xFF, rest @ ..] = bytes else {
        return None;
    };
    // Any number of fill bytes may stand before the marker.
    let fill = rest.iter().take_while(|byte| **byte == 0xFF).count();
    let (marker, rest) = rest[fill..].split_first()?;
    let length = usize::from(u16::from_be_bytes(*rest.first_chunk()?));
    let (segment, rest) = rest.split_at_checked(length)?;
    Some((*marker, segment.get(2..)?, rest))
}
