//! PNG files whose packed rows a PDF takes as they are (PNG specification, second edition).

use std::io::Read;

use flate2::read::ZlibDecoder;

use super::picture::{Coding, Colors, Picture};

pub(super) const START: &[u8] = b"\x89PNG\r\n\x1a\n";

/// Passes 8-bit grey or RGB without interlacing or transparency; `None` means: decode it.
pub(super) fn pass(bytes: &[u8]) -> Option<Picture> {
    let mut rest = bytes.strip_prefix(START)?;
    let mut head: Option<Head> = None;
    let mut packed = Vec::new();
    loop {
        let (name, content, after) = chunk(rest)?;
        match name {
            b"IHDR" => head = Some(Head::read(content)?),
            b"IDAT" => packed.extend(content),
            b"tRNS" => return None,
            b"IEND" => break,
            _ => {}
        }
        rest = after;
    }
    let head = head?;
    head.fits(&packed).then_some(Picture {
        width: head.width,
        height: head.height,
        colors: head.colors,
        coding: Coding::Png(packed),
        alpha: None,
    })
}

struct Head {
    width: usize,
    height: usize,
    colors: Colors,
}

impl Head {
    fn read(content: &[u8]) -> Option<Self> {
        let (width, rest) = content.split_first_chunk()?;
        let (height, rest) = rest.split_first_chunk()?;
        let [bits, color, packing, filtering, interlacing] = rest else {
            return None;
        };
        let colors = match color {
            0 => Colors::Gray,
            2 => Colors::Rgb,
            _ => return None,
        };
        let plain = (*bits, *packing, *filtering, *interlacing) == (8, 0, 0, 0);
        plain.then_some(Self {
            width: usize::try_from(u32::from_be_bytes(*width)).ok()?,
            height: usize::try_from(u32::from_be_bytes(*height)).ok()?,
            colors,
        })
    }

    /// Whether the packed rows are whole. Nobody decodes them before a customer's viewer does.
    fn fits(&self, packed: &[u8]) -> bool {
        let parts = match self.colors {
            Colors::Gray => 1,
            Colors::Rgb => 3,
        };
        let expected = self
            .width
            .checked_mul(parts)
            .and_then(|row| (row + 1).checked_mul(self.height));
        let unpacked = std::io::copy(
            &mut ZlibDecoder::new(packed).take(LARGEST),
            &mut std::io::sink(),
        );
        0 < self.width
            && expected.is_some_and(|expected| {
                unpacked.is_ok_and(|length| u64::try_from(expected) == Ok(length))
            })
    }
}

/// Larger than any photo of a driveway; a small file must not unpack for minutes.
const LARGEST: u64 = 1 << 29;

/// Name and content of the first chunk, and what follows it.
fn chunk(bytes: &[u8]) -> Option<(&[u8; 4], &[u8], &[u8])> {
    let (length, rest) = bytes.split_first_chunk()?;
    let (name, rest) = rest.split_first_chunk()?;
    let (content, rest) =
        rest.split_at_checked(usize::try_from(u32::from_be_bytes(*length)).ok()?)?;
    let (_check, rest) = rest.split_at_checked(4)?;
    Some((name, content, rest))
}
