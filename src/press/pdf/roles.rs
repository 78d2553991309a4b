//! Standard structure types of ISO 32000-1, 14.8.4, so that no role map is needed.

use crate::press::page::{Scope, StructureRole};

/// The structure type, which is also the tag of the marked content.
pub fn name(role: StructureRole) -> &'static str {
    match role {
        StructureRole::Document => "Document",
        StructureRole::Section => "Sect",
        StructureRole::Heading(level) => heading(level),
        StructureRole::Paragraph => "P",
        StructureRole::List => "L",
        StructureRole::ListItem => "LI",
        StructureRole::Label => "Lbl",
        StructureRole::ListBody => "LBody",
        StructureRole::Table => "Table",
        StructureRole::TableHead => "THead",
        StructureRole::TableBody => "TBody",
        StructureRole::TableRow => "TR",
        StructureRole::HeaderCell(_) => "TH",
        StructureRole::DataCell => "TD",
        StructureRole::Figure => "Figure",
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
