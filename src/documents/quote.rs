//! The customer's quote, and the invoices after it: view to pages.

use std::collections::BTreeMap;

use super::error::DocumentError;
use super::pages::{Paged, pages};
use super::template::Template;
use super::views::bill::BillView;
use super::views::quote::QuoteView;
use crate::press::drawing::Drawing;
use crate::press::layout::style::Look;
use crate::press::page::Document;

/// The pages of a quote; figures are `plan` and `cure`, where the view says so.
pub fn quote_document(
    view: &QuoteView,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    quote_document_in(view, figures, &Look::default(), None)
}

/// The same in the owner's look, and with the owner's template if there is one.
pub fn quote_document_in(
    view: &QuoteView,
    figures: &BTreeMap<String, Drawing>,
    look: &Look,
    own_template: Option<&str>,
) -> Result<Document, DocumentError> {
    let of = Paged {
        template: Template::Quote,
        view,
        file: &view.file,
        author: &view.firm.name,
        figures,
    };
    pages(&of, look, own_template)
}

/// The pages of an invoice or a credit; its figure is `parts`, where the view says so.
pub fn bill_document(
    view: &BillView,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    let of = Paged {
        template: Template::Bill,
        view,
        file: &view.file,
        author: &view.firm.name,
        figures,
    };
    pages(&of, &Look::default(), None)
}
