//! Standard structure types of ISO 32000-1, 14.8.4, so that no role map is needed.

use crate::press::page::{Role, Scope};

/// The structure type, which is also the tag of the marked content.
pub fn name(role: Role) -> &'static str {
    match role {
        Role::Document => "Document",
        Role::Section => "Sect",
        Role::Heading(level) => heading(level),
        Role::Paragraph => "P",
        Role::List => "L",
        Role::ListItem => "LI",
        Role::Label => "Lbl",
        Role::ListBody => "LBody",
        Role::Table => "Table",
        Role::TableHead => "THead",
        Role::TableBody => "TBody",
        Role::TableRow => "TR",
        Role::HeaderCell(_) => "TH",
        Role::DataCell => "TD",
        Role::Figure => "Figure",
    }
}

pub fn scope(scope: Scope) -> &'static str {
    match scope {
        Scope::Row => "Row",
        Scope::Column => "Column",
    }
}

/// Six levels exist; a deeper heading is read as the deepest there is.
fn heading(level: u8) -> &'static str {
    match level {
        0 | 1 => "H1",
        2 => "H2",
        3 => "H3",
        4 => "H4",
        5 => "H5",
        _ => "H6",
    }
}
