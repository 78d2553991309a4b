//! The office's cost sheet: view to pages.

use std::collections::BTreeMap;

use super::error::DocumentError;
use super::markup;
use super::template::Template;
use super::views::cost::CostView;
use crate::press::drawing::Drawing;
use crate::press::layout::{paginate, style::Look};
use crate::press::page::{About, Document};

/// The pages of a cost sheet; its figure is `rise`.
pub fn cost_document(
    view: &CostView,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    let filled = Template::Cost.fill(view, None)?;
    let flow = markup::read(&filled).map_err(|error| DocumentError::Markup {
        template: Template::Cost.name().to_owned(),
        error,
    })?;
    let about = About {
        title: view.file.title.clone(),
        author: view.firm.clone(),
        subject: view.file.subject.clone(),
        language: view.file.language.clone(),
        created: view.file.created,
    };
    Ok(paginate(&flow, figures, &Look::default(), about)?)
}
