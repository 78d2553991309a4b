//! Photos as a camera or telephone writes them, made fit for a page: upright, not larger than
//! paper can show, and silent about where and with what they were taken.

use std::fmt;
use std::io::Cursor;
use std::sync::Arc;

use image::codecs::jpeg::{JpegDecoder, JpegEncoder};
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, Limits, imageops};

use super::drawing::{Drawing, Picture, Shape, Size, point};
use super::pdf;

/// Points on the longer side: 300 to the inch over half a page's width, with room to spare.
const LONGEST: u32 = 1400;
/// A small file must not unpack into more than this.
const MOST_BYTES: u64 = 600 * 1024 * 1024;
/// Hardly told from the original on paper (common practice, no source).
const QUALITY: u8 = 82;

/// A photo that may stand on a page.
#[derive(Clone, Debug)]
pub struct Photo {
    bytes: Arc<[u8]>,
    width: f32,
    height: f32,
}

/// Why a photo cannot go on a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PhotoError(String);

impl fmt::Display for PhotoError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for PhotoError {}

impl Photo {
    /// Reads a JPEG file. One that is upright and small passes as it is; another is turned as its
    /// camera says, made smaller and written anew.
    ///
    /// # Errors
    /// When it is no JPEG file, is damaged, or would unpack into too much.
    pub fn read(bytes: &[u8]) -> Result<Self, PhotoError> {
        if !bytes.starts_with(b"\xFF\xD8") {
            return Err(PhotoError("it is not a JPEG picture".to_owned()));
        }
        let refuse = |error: image::ImageError| PhotoError(error.to_string());
        let mut decoder = JpegDecoder::new(Cursor::new(bytes)).map_err(refuse)?;
        let mut limits = Limits::default();
        limits.max_alloc = Some(MOST_BYTES);
        decoder.set_limits(limits).map_err(refuse)?;
        let turned = decoder.orientation().map_err(refuse)?;
        let (width, height) = decoder.dimensions();
        if turned == Orientation::NoTransforms && width.max(height) <= LONGEST {
            return Self::kept(bytes.to_vec());
        }
        let mut image = DynamicImage::from_decoder(decoder).map_err(refuse)?;
        image.apply_orientation(turned);
        let (width, height) = fitted(image.width(), image.height());
        if width < image.width() {
            image = DynamicImage::ImageRgb8(imageops::thumbnail(&image.to_rgb8(), width, height));
        }
        let mut written = Vec::new();
        JpegEncoder::new_with_quality(&mut written, QUALITY)
            .encode_image(&image.to_rgb8())
            .map_err(refuse)?;
        Self::kept(written)
    }

    fn kept(bytes: Vec<u8>) -> Result<Self, PhotoError> {
        let picture = pdf::Jpeg::read(&bytes).map_err(PhotoError)?;
        #[expect(
            clippy::cast_precision_loss,
            reason = "a few thousand points at most; only their ratio counts"
        )]
        Ok(Self {
            width: picture.width as f32,
            height: picture.height as f32,
            bytes: bytes.into(),
        })
    }

    /// The photo as a figure, as large as fits.
    pub fn figure(&self, most: Size, alternative: String) -> Drawing {
        let scale = (most.width / self.width).min(most.height / self.height);
        let size = Size::new(self.width * scale, self.height * scale);
        Drawing {
            size,
            shapes: vec![Shape::Picture(Picture {
                at: point(0.0, 0.0),
                size,
                bytes: Arc::clone(&self.bytes),
            })],
            alternative,
        }
    }
}

/// The same shape with its longer side at most [`LONGEST`].
fn fitted(width: u32, height: u32) -> (u32, u32) {
    let longer = width.max(height);
    if longer <= LONGEST {
        return (width, height);
    }
    let less = |side: u32| {
        let side = u64::from(side) * u64::from(LONGEST) / u64::from(longer);
        u32::try_from(side.max(1)).expect("smaller than it was")
    };
    (less(width), less(height))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A picture of this size, its left half red and its right half blue, with an Exif part
    /// that says how the camera was held and where.
    fn taken(width: u32, height: u32, held: u8) -> Vec<u8> {
        let image = image::RgbImage::from_fn(width, height, |x, _| {
            image::Rgb(if x * 2 < width {
                [255, 0, 0]
            } else {
                [0, 0, 255]
            })
        });
        let mut plain = Vec::new();
        JpegEncoder::new_with_quality(&mut plain, 95)
            .encode_image(&image)
            .unwrap();
        let mut exif = b"Exif\0\0MM\0*\0\0\0\x08\0\x02".to_vec();
        exif.extend([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, held, 0, 0]);
        exif.extend([0x01, 0x0E, 0, 2, 0, 0, 0, 20, 0, 0, 0, 38]);
        exif.extend(b"\0\0\0\0at 18 Sample Lane 555-\0");
        let length = u16::try_from(exif.len() + 2).unwrap();
        let mut bytes = b"\xFF\xD8\xFF\xE1".to_vec();
        bytes.extend(length.to_be_bytes());
        bytes.extend(exif);
        bytes.extend(&plain[2..]);
        bytes
    }

    fn seen(photo: &Photo) -> image::RgbImage {
        image::load_from_memory_with_format(&photo.bytes, image::ImageFormat::Jpeg)
            .unwrap()
            .to_rgb8()
    }

    #[test]
    fn a_photo_stands_upright_and_is_not_larger_than_paper_shows() {
        #[track_caller]
        fn case(of: (u32, u32, u8), size: (u32, u32), red: (u32, u32)) {
            let photo = Photo::read(&taken(of.0, of.1, of.2)).unwrap();
            let image = seen(&photo);
            assert_eq!(image.dimensions(), size, "{of:?}");
            let point = image.get_pixel(red.0, red.1).0;
            assert!(200 < point[0] && point[2] < 60, "{of:?}: {point:?}");
        }

        case((80, 40, 1), (80, 40), (10, 20));
        // 3: upside down, so red is on the right; 6: turned right, so red is at the top.
        case((80, 40, 3), (80, 40), (70, 20));
        case((80, 40, 6), (40, 80), (20, 10));
        case((80, 40, 8), (40, 80), (20, 70));
        case((2800, 700, 1), (1400, 350), (100, 100));
        case((2800, 700, 6), (350, 1400), (100, 100));
    }

    #[test]
    fn what_is_no_photo_is_refused() {
        assert!(Photo::read(b"no picture").is_err());
        let whole = taken(64, 48, 1);
        assert!(Photo::read(&whole[..whole.len() / 2]).is_err());
    }
}
