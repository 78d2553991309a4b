//! Why a document could not be made.

use super::markup::MarkupError;
use super::template::TemplateError;
use crate::press::layout::LayoutError;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DocumentError {
    Template(TemplateError),
    Markup {
        /// The template's name.
        template: String,
        error: MarkupError,
    },
    Layout(LayoutError),
}

impl std::fmt::Display for DocumentError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Template(error) => write!(f, "{error}"),
            Self::Markup { template, error } => {
                write!(f, "template `{template}`, once filled, {error}")
            }
            Self::Layout(error) => write!(f, "{error}"),
        }
    }
}

impl std::error::Error for DocumentError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Template(error) => Some(error),
            Self::Markup { error, .. } => Some(error),
            Self::Layout(error) => Some(error),
        }
    }
}

impl From<TemplateError> for DocumentError {
    fn from(error: TemplateError) -> Self {
        Self::Template(error)
    }
}

impl From<LayoutError> for DocumentError {
    fn from(error: LayoutError) -> Self {
        Self::Layout(error)
    }
}
