//! Why blocks could not become pages.

use crate::press::text::Unshapable;

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LayoutError {
    /// Characters without a sign in the typeface, each with a text it stands in.
    Unshapable(Vec<(Unshapable, String)>),
    UnknownFigure {
        name: String,
    },
    /// A figure, or a table row, that no page can hold.
    TooLarge {
        /// The figure's name, or the row's words.
        what: String,
    },
    /// `{page:name}`, but nothing has that name.
    UnknownPart {
        name: String,
    },
    /// A document has one heading of level 1; this has another number of them.
    Headings {
        count: usize,
    },
    /// Page numbers moved the text, and the text the page numbers, without end.
    Unsettled,
}

impl From<Unshapable> for LayoutError {
    fn from(unshapable: Unshapable) -> Self {
        Self::Unshapable(vec![(unshapable, String::new())])
    }
}

impl std::fmt::Display for LayoutError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unshapable(all) => {
                for (at, (unshapable, text)) in all.iter().enumerate() {
                    let separator = if at == 0 { "" } else { "; " };
                    write!(f, "{separator}{unshapable}")?;
                    if !text.is_empty() {
                        write!(f, " in `{text}`")?;
                    }
                }
                Ok(())
            }
            Self::UnknownFigure { name } => write!(f, "no figure is named `{name}`"),
            Self::TooLarge { what } => write!(f, "`{what}` is larger than a page"),
            Self::UnknownPart { name } => {
                write!(
                    f,
                    "a page number is asked for, but no part is named `{name}`"
                )
            }
            Self::Headings { count } => write!(
                f,
                "a document needs one heading of level 1, this one has {count}"
            ),
            Self::Unsettled => write!(f, "the page numbers do not settle"),
        }
    }
}

impl std::error::Error for LayoutError {}
