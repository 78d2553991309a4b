//! From a priced desk to the customer's quote: the view and the bytes of the PDF.

use super::desk::{self, Desk};
use crate::costing::Offer;
use crate::documents::offering::{self, Offering, Shown};
use crate::documents::quote_document;
use crate::documents::views::quote::QuoteView;
use crate::office::record::Replaces;
use crate::press::layout::style::Look;
use crate::press::pdf;
use crate::reading::{Problem, Problems};

/// A quote on paper.
#[derive(Debug)]
pub struct QuotePdf {
    pub view: QuoteView,
    pub pdf: Vec<u8>,
}

/// The quote with the photos of the takeoff; every photo that cannot be used is reported.
pub fn quote(
    desk: &Desk,
    offer: &Offer,
    number: Option<&str>,
    replaces: Option<Replaces>,
    problems: &mut Problems,
) -> Option<QuotePdf> {
    let before = problems.len();
    let photos = desk::photos(desk, problems);
    if problems.len() != before {
        return None;
    }
    quote_with(desk, offer, (number, replaces), &photos, problems)
}

/// The quote with these photos.
pub fn quote_with(
    desk: &Desk,
    offer: &Offer,
    (number, replaces): (Option<&str>, Option<Replaces>),
    photos: &[Shown],
    problems: &mut Problems,
) -> Option<QuotePdf> {
    let of = Offering {
        takeoff: &desk.takeoff,
        business: &desk.business,
        rules: &desk.book.rules,
        offer,
        quoted: desk.quoted,
        pour: desk.days[desk.takeoff.first_pour()].day,
        number,
        replaces,
        photos,
    };
    let figures = offering::figures(of, Look::default().accent);
    let view = offering::view(of);
    match quote_document(&view, &figures) {
        Ok(document) => Some(QuotePdf {
            view,
            pdf: pdf::write(&document),
        }),
        Err(error) => {
            problems.push(
                Problem::new("cannot-set-page", error.to_string())
                    .help("write it with letters of the bundled face, or shorter"),
            );
            None
        }
    }
}
