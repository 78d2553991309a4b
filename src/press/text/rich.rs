//! Words with a bold or a soft voice among them.

use crate::press::drawing::Face;

#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Voice {
    /// As the style says.
    Plain,
    Bold,
    /// The second voice: lighter ink.
    Soft,
}

/// A stretch of text in one voice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Span {
    Text(String, Voice),
    /// The number of the page on which a named part starts.
    PageOf(String, Voice),
}

/// Text in several voices.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rich(pub Vec<Span>);

impl Rich {
    pub fn plain(text: impl Into<String>) -> Self {
        Self(vec![Span::Text(text.into(), Voice::Plain)])
    }

    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|span| match span {
            Span::Text(text, _) => text.trim().is_empty(),
            Span::PageOf(..) => false,
        })
    }

    /// The words alone; a page number shows as `?`.
    pub fn words(&self) -> String {
        self.0
            .iter()
            .map(|span| match span {
                Span::Text(text, _) => text.as_str(),
                Span::PageOf(..) => "?",
            })
            .collect()
    }
}

impl Voice {
    pub fn face(self, style: Face) -> Face {
        match self {
            Self::Plain | Self::Soft => style,
            Self::Bold => Face::Bold,
        }
    }
}
