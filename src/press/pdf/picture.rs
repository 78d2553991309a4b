//! One picture, read once: its size for layout, its bytes for the file.

use std::fmt;

use printpdf::{RawImage, RawImageData, RawImageFormat};

use super::{jpeg, png};
use crate::press::page::PictureKind;

/// A picture that a PDF can carry, with 8 bits a colour.
#[derive(Debug)]
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub(super) colors: Colors,
    pub(super) coding: Coding,
    /// How opaque each point is; `None` when all are.
    pub(super) alpha: Option<Vec<u8>>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Colors {
    Gray,
    Rgb,
}

#[derive(Debug)]
pub(super) enum Coding {
    /// A JPEG file without the parts that tell where, when and with what it was taken.
    Jpeg(Vec<u8>),
    /// The packed rows of a PNG file.
    Png(Vec<u8>),
    /// Unpacked, row by row.
    Plain(Vec<u8>),
}

/// Why a picture cannot go on a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PictureError {
    /// The bytes do not begin as a file of this kind does.
    WrongKind { kind: PictureKind },
    /// The file is cut short or damaged.
    Damaged { kind: PictureKind, reason: String },
}

impl fmt::Display for PictureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::WrongKind { kind } => write!(f, "this is not a {} picture", name(*kind)),
            Self::Damaged { kind, reason } => {
                write!(f, "the {} picture cannot be read: {reason}", name(*kind))
            }
        }
    }
}

impl std::error::Error for PictureError {}

impl Picture {
    /// Reads a picture. What a PDF takes as it is passes through untouched; the rest is
    /// decoded. A picture with an [`Err`] must not be placed on a page.
    pub fn read(bytes: &[u8], kind: PictureKind) -> Result<Self, PictureError> {
        let (starts, passed) = match kind {
            PictureKind::Jpeg => (bytes.starts_with(jpeg::START), jpeg::pass(bytes)),
            PictureKind::Png => (bytes.starts_with(png::START), png::pass(bytes)),
        };
        if !starts {
            return Err(PictureError::WrongKind { kind });
        }
        passed.map_or_else(|| decode(bytes, kind), Ok)
    }
}

fn decode(bytes: &[u8], kind: PictureKind) -> Result<Picture, PictureError> {
    // Warnings only tell the format and the size, which are known.
    let image = RawImage::decode_from_bytes(bytes, &mut Vec::new())
        .map_err(|reason| PictureError::Damaged { kind, reason })?;
    let samples = match image.pixels {
        RawImageData::U8(samples) => samples,
        RawImageData::U16(samples) => samples
            .into_iter()
            .map(|sample| sample.to_be_bytes()[0])
            .collect(),
        RawImageData::F32(_) => {
            let reason = "its colours are floating-point numbers".to_owned();
            return Err(PictureError::Damaged { kind, reason });
        }
    };
    let (colors, parts, has_alpha) = match image.data_format {
        RawImageFormat::R8 | RawImageFormat::R16 => (Colors::Gray, 1, false),
        RawImageFormat::RG8 | RawImageFormat::RG16 => (Colors::Gray, 1, true),
        RawImageFormat::RGB8 | RawImageFormat::RGB16 => (Colors::Rgb, 3, false),
        RawImageFormat::RGBA8 | RawImageFormat::RGBA16 => (Colors::Rgb, 3, true),
        RawImageFormat::BGR8
        | RawImageFormat::BGRA8
        | RawImageFormat::RGBF32
        | RawImageFormat::RGBAF32 => {
            let reason = "its colours are in an unusual order".to_owned();
            return Err(PictureError::Damaged { kind, reason });
        }
    };
    let step = parts + usize::from(has_alpha);
    let points = samples.chunks_exact(step);
    let plain = points
        .clone()
        .flat_map(|point| &point[..parts])
        .copied()
        .collect();
    let alpha: Option<Vec<u8>> = has_alpha.then(|| points.map(|point| point[parts]).collect());
    Ok(Picture {
        width: image.width,
        height: image.height,
        colors,
        coding: Coding::Plain(plain),
        alpha: alpha.filter(|alpha| alpha.iter().any(|opacity| *opacity != u8::MAX)),
    })
}

fn name(kind: PictureKind) -> &'static str {
    match kind {
        PictureKind::Jpeg => "JPEG",
        PictureKind::Png => "PNG",
    }
}
