//! From a view to pages: its template filled, read and set.

use std::collections::BTreeMap;

use serde::Serialize;

use super::error::DocumentError;
use super::markup;
use super::template::Template;
use super::views::quote::FileFacts;
use crate::press::drawing::Drawing;
use crate::press::layout::{paginate, style::Look};
use crate::press::page::{About, Document};

/// What a page is filled from, and what its file says of itself.
pub(super) struct Paged<'a, V> {
    pub template: Template,
    pub view: &'a V,
    pub file: &'a FileFacts,
    pub author: &'a str,
    pub figures: &'a BTreeMap<String, Drawing>,
}

/// In the owner's look, and with the owner's template if there is one.
pub(super) fn pages<V: Serialize>(
    of: &Paged<'_, V>,
    look: &Look,
    own_template: Option<&str>,
) -> Result<Document, DocumentError> {
    let filled = of.template.fill(of.view, own_template)?;
    let flow = markup::read(&filled).map_err(|error| DocumentError::Markup {
        template: of.template.name().to_owned(),
        error,
    })?;
    let about = About {
        title: of.file.title.clone(),
        author: of.author.to_owned(),
        subject: of.file.subject.clone(),
        language: of.file.language.clone(),
        created: of.file.created,
    };
    Ok(paginate(&flow, of.figures, look, about)?)
}
