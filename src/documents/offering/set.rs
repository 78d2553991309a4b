//! Boxes and covers set in the slabs, as the customer reads of them.
//!
//! Makers use the same class words differently, so the load is told and not the word.

use super::Offering;
use super::phrases::{length, list};
use crate::input::book::BoxStock;
use crate::input::job::{Lid, SetBox};
use crate::input::phrases::{Adjust, Pounds};

/// `cleanout, maker's rating 20,800 lb; old meter box raised 2 in`.
pub(super) fn scope(of: Offering<'_>) -> String {
    let mut texts: Vec<(String, usize)> = Vec::new();
    for (set, stock) in boxes(of) {
        let text = one(set, stock);
        match texts.iter_mut().find(|(known, _)| *known == text) {
            Some((_, many)) => *many += 1,
            None => texts.push((text, 1)),
        }
    }
    let mut texts: Vec<String> = texts
        .into_iter()
        .map(|(text, many)| {
            if many == 1 {
                text
            } else {
                format!("{many}\u{a0}×\u{a0}{text}")
            }
        })
        .collect();
    let late = names(of, SetBox::waits_for_lid);
    match late.len() {
        0 => {}
        1 => texts.push(format!(
            "a temporary lid stands on the {} until the one on order comes; we come back to set it",
            list(&late)
        )),
        _ => texts.push(format!(
            "temporary lids stand on the {} until those on order come; we come back to set them",
            list(&late)
        )),
    }
    texts.join("; ")
}

/// Lids that somebody else brings.
pub(super) fn not_included(of: Offering<'_>) -> Vec<String> {
    let theirs = names(of, |set| {
        set.adjust.is_none() && set.lid.value == Lid::Theirs
    });
    if theirs.is_empty() {
        return Vec::new();
    }
    let brings = if theirs.len() == 1 {
        "lid, which its owner brings"
    } else {
        "lids, which their owners bring"
    };
    vec![format!("For the {}: the {brings}", list(&theirs))]
}

fn boxes(of: Offering<'_>) -> impl Iterator<Item = (&SetBox, &BoxStock)> {
    let boxes = of.takeoff.slabs.iter().flat_map(|slab| &slab.boxes);
    boxes.filter_map(move |set| Some((set, of.rules.boxes.get(&set.stock.value)?)))
}

fn names(of: Offering<'_>, fits: impl Fn(&SetBox) -> bool) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for (set, _) in boxes(of).filter(|(set, _)| fits(set)) {
        if !names.contains(&set.called) {
            names.push(set.called.clone());
        }
    }
    names
}

fn one(set: &SetBox, stock: &BoxStock) -> String {
    let name = &set.called;
    if let Some(adjust) = &set.adjust {
        return match adjust.value {
            Adjust::Raise(by) => format!("{name} raised {}", length(by)),
            Adjust::Lower(by) => format!("{name} lowered {}", length(by)),
        };
    }
    let load = |what: &str, pounds: Pounds| {
        let pounds = pounds.amount().to_string().replace(' ', "\u{a0}");
        format!("{name}, maker's {what} {pounds}")
    };
    match (&stock.design_load, &stock.rated) {
        (Some(design), _) => load("design load", design.value),
        (None, Some(rated)) => load("rating", rated.value),
        (None, None) => name.clone(),
    }
}
