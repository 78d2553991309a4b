//! From a priced desk to the customer's quote: the view and the bytes of the PDF.

use super::desk::{self, Desk};
use super::pdf_bytes::pdf_bytes;
use crate::costing::Offer;
use crate::documents::document;
use crate::documents::offering::{self, Offering};
use crate::documents::views::quote::QuoteView;
use crate::office::record::Replaces;
use crate::press::layout::style::Look;
use crate::reading::{Problems, Read};

/// A quote on paper.
#[derive(Debug)]
pub struct QuotePdf {
    pub view: QuoteView,
    pub pdf: Vec<u8>,
}

/// The quote with the photos of the takeoff; every photo that cannot be used is reported.
pub fn quote_pdf(
    desk: &Desk,
    offer: &Offer,
    number: Option<&str>,
    replaces: Option<Replaces>,
    problems: &mut Problems,
) -> Read<QuotePdf> {
    let photos = desk::photos(desk, problems)?;
    let of = Offering {
        number,
        replaces,
        photos: &photos,
        ..desk.offering(offer)
    };
    let figures = offering::figures(of, Look::default().accent);
    let view = offering::view(of);
    let pdf = pdf_bytes(document(&view, &figures), problems)?;
    Ok(QuotePdf { view, pdf })
}

/// As the customer reads it: `2026-0041, revision 2`.
pub fn shown_number(number: &str, revision: u32) -> String {
    if revision == 1 {
        number.to_owned()
    } else {
        format!("{number}, revision {revision}")
    }
}
