//! From a view to pages: its template filled, read and set.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::Serialize;

use super::error::DocumentError;
use super::markup;
use super::template::Template;
use super::views::bill::BillView;
use super::views::change::ChangeView;
use super::views::cost::CostView;
use super::views::quote::{FileFacts, QuoteView};
use super::views::reprice_page::RepricePage;
use crate::press::drawing::Drawing;
use crate::press::layout::{paginate, style::Look};
use crate::press::page::{About, Document};

/// A view that becomes a document.
pub trait Printed: Serialize {
    /// Read once for the life of the process.
    fn template() -> &'static Template;
    fn file(&self) -> &FileFacts;
    fn author(&self) -> &str;
}

macro_rules! documents {
    ($($view:ty: $file:literal by $author:expr;)*) => {
        $(impl Printed for $view {
            fn template() -> &'static Template {
                static TEMPLATE: OnceLock<Template> = OnceLock::new();
                TEMPLATE.get_or_init(|| {
                    let text = include_str!(concat!("../../templates/", $file));
                    Template::read($file, text).expect("the built-in templates are sound")
                })
            }

            fn file(&self) -> &FileFacts {
                &self.file
            }

            fn author(&self) -> &str {
                let author: fn(&Self) -> &str = $author;
                author(self)
            }
        })*
    };
}

// Every document: its view, its file in `templates`, and whose it is.
documents! {
    QuoteView: "quote.hbs" by |view| &view.firm.name;
    BillView: "bill.hbs" by |view| &view.firm.name;
    ChangeView: "change.hbs" by |view| &view.firm.name;
    CostView: "cost.hbs" by |view| &view.firm;
    // It tells of several firms where several folders are asked.
    RepricePage: "reprice.hbs" by |_| "flatwork";
}

/// The pages of a document; the template finds its figures by their names.
pub fn document<V: Printed>(
    view: &V,
    figures: &BTreeMap<String, Drawing>,
) -> Result<Document, DocumentError> {
    let template = V::template();
    let flow = markup::read(&template.fill(view)?).map_err(|error| DocumentError::Markup {
        template: template.file.to_owned(),
        error,
    })?;
    let file = view.file();
    let about = About {
        title: file.title.clone(),
        author: view.author().to_owned(),
        subject: file.subject.clone(),
        language: file.language.clone(),
        created: file.created,
    };
    Ok(paginate(&flow, figures, &Look::default(), about)?)
}
