//! The customer's quote, and the invoices after it: view to pages.

use super::error::DocumentError;
use super::markup;
use super::template::Template;
use super::views::bill::BillView;
use super::views::quote::QuoteView;
use crate::press::drawing::Drawing;
use crate::press::layout::{paginate, style::Look};
use crate::press::page::{About, Document};
use std::collections::BTreeMap;

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
    let filled = Template::Quote.fill(view, own_template)?;
    let flow = markup::read(&filled).map_err(|error| DocumentError::Markup {
        template: Template::Quote.name().to_owned(),
        error,
    })?;
    let about = About {
        title: view.file.title.clone(),
        author: view.firm.name.clone(),
        subject: view.file.subject.clone(),
        language: view.file.language.clone(),
        created: view.file.created,
    };
    Ok(paginate(&flow, figures, look, about)?)
}

/// The pages of an invoice or a credit; its figure is `parts`, where the view says so.
pub fn bill_document(
    view: &BillView,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    let filled = Template::Bill.fill(view, None)?;
    let flow = markup::read(&filled).map_err(|error| DocumentError::Markup {
        template: Template::Bill.name().to_owned(),
        error,
    })?;
    let about = About {
        title: view.file.title.clone(),
        author: view.firm.name.clone(),
        subject: view.file.subject.clone(),
        language: view.file.language.clone(),
        created: view.file.created,
    };
    Ok(paginate(&flow, figures, &Look::default(), about)?)
}
