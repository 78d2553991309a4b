//! The office's cost sheet: view to pages.

use std::collections::BTreeMap;

use super::error::DocumentError;
use super::pages::{Paged, pages};
use super::template::Template;
use super::views::cost::CostView;
use crate::press::drawing::Drawing;
use crate::press::layout::style::Look;
use crate::press::page::Document;

/// The pages of a cost sheet; its figure is `rise`.
pub fn cost_document(
    view: &CostView,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    let of = Paged {
        template: Template::Cost,
        view,
        file: &view.file,
        author: &view.firm,
        figures,
    };
    pages(&of, &Look::default(), None)
}
