//! What can be wrong with a document's markup, and where.

/// Line and column count from 1, in the filled template.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MarkupError {
    pub line: u32,
    pub column: u32,
    pub wrong: Wrong,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// Not well-formed XML.
    Xml(String),
    UnknownElement {
        name: String,
        inside: String,
    },
    UnknownAttribute {
        name: String,
        element: String,
    },
    MissingAttribute {
        name: String,
        element: String,
    },
    BadValue {
        attribute: String,
        value: String,
        /// What may stand there.
        allowed: String,
    },
    /// Words where only elements may stand.
    StrayText {
        inside: String,
        text: String,
    },
    /// A table row with more or fewer cells than the table has columns.
    CellCount {
        cells: usize,
        columns: usize,
    },
}

impl std::fmt::Display for MarkupError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "line {}, column {}: ", self.line, self.column)?;
        match &self.wrong {
            Wrong::Xml(message) => write!(f, "{message}"),
            Wrong::UnknownElement { name, inside } => {
                write!(f, "`<{name}>` has no meaning inside `<{inside}>`")
            }
            Wrong::UnknownAttribute { name, element } => {
                write!(f, "`<{element}>` has no attribute `{name}`")
            }
            Wrong::MissingAttribute { name, element } => {
                write!(f, "`<{element}>` needs the attribute `{name}`")
            }
            Wrong::BadValue {
                attribute,
                value,
                allowed,
            } => write!(f, "`{attribute}` is `{value}`, but must be {allowed}"),
            Wrong::StrayText { inside, text } => {
                write!(f, "words stand directly inside `<{inside}>`: `{text}`")
            }
            Wrong::CellCount { cells, columns } => {
                write!(f, "a row has {cells} cells, its table {columns} columns")
            }
        }
    }
}

impl std::error::Error for MarkupError {}
