//! One JPEG picture (ITU-T T.81), read once: its size for layout, its bytes for the file.

use printpdf::{RawImage, RawImageData, RawImageFormat};

/// A JPEG picture as a PDF can carry it, with 8 bits a colour.
#[derive(Debug)]
pub struct Jpeg {
    pub width: usize,
    pub height: usize,
    pub(super) colors: Colors,
    pub(super) coding: Coding,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Colors {
    Gray,
    Rgb,
}

#[derive(Debug)]
pub(super) enum Coding {
    /// The file without the parts that tell where, when and with what it was taken.
    Jpeg(Vec<u8>),
    /// Unpacked, row by row.
    Plain(Vec<u8>),
}

const START: &[u8] = b"\xFF\xD8";

impl Jpeg {
    /// Reads a JPEG file. What a PDF takes as it is passes through untouched; the rest, such as
    /// a picture in inks, is decoded. A picture with an error must not be placed on a page.
    ///
    /// # Errors
    /// When the file is another one, cut short or damaged.
    pub fn read(bytes: &[u8]) -> Result<Self, String> {
        if !bytes.starts_with(START) {
            return Err("this is not a JPEG picture".to_owned());
        }
        let decoded =
            || decode(bytes).map_err(|why| format!("the JPEG picture cannot be read: {why}"));
        pass(bytes).map_or_else(decoded, Ok)
    }
}

/// Passes 8-bit grey or three-colour pictures; `None` means: decode it.
fn pass(bytes: &[u8]) -> Option<Jpeg> {
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
    is_whole.then_some(Jpeg {
        width,
        height,
        colors,
        coding: Coding::Jpeg(kept),
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

fn decode(bytes: &[u8]) -> Result<Jpeg, String> {
    // Warnings only tell the format and the size, which are known.
    let image = RawImage::decode_from_bytes(bytes, &mut Vec::new())?;
    let colors = match image.data_format {
        RawImageFormat::R8 => Colors::Gray,
        RawImageFormat::RGB8 => Colors::Rgb,
        other => return Err(format!("its colours are in an unusual order, {other:?}")),
    };
    let RawImageData::U8(samples) = image.pixels else {
        return Err("its colours are not of 8 bits".to_owned());
    };
    Ok(Jpeg {
        width: image.width,
        height: image.height,
        colors,
        coding: Coding::Plain(samples),
    })
}
