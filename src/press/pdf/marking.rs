//! Who a stretch of page content belongs to, said at its start.

use std::collections::BTreeMap;

use printpdf::{DictItem, Op};

use super::roles;
use crate::press::page::Role;

/// Opens content that is read aloud; `mcid` counts from 0 on each page.
pub fn element(role: Role, mcid: usize) -> Op {
    let mcid = i64::try_from(mcid).expect("a page has fewer marks than 2^63");
    begin(roles::name(role), [("MCID", DictItem::Int(mcid))])
}

/// Opens a rule, a fill or another decoration that a screen reader skips.
pub fn decoration() -> Op {
    begin("Artifact", [("Type", word("Layout"))])
}

/// Opens what is repeated on every page and read on none.
pub fn running_head() -> Op {
    begin(
        "Artifact",
        [("Type", word("Pagination")), ("Subtype", word("Header"))],
    )
}

pub fn running_foot() -> Op {
    begin(
        "Artifact",
        [("Type", word("Pagination")), ("Subtype", word("Footer"))],
    )
}

fn begin<const N: usize>(tag: &str, properties: [(&str, DictItem); N]) -> Op {
    let map: BTreeMap<String, DictItem> = properties
        .into_iter()
        .map(|(key, value)| (key.to_owned(), value))
        .collect();
    Op::BeginMarkedContentWithProperties {
        tag: tag.to_owned(),
        properties: DictItem::Dict { map },
    }
}

fn word(name: &str) -> DictItem {
    DictItem::Name(name.as_bytes().to_vec())
}
