//! Reads the rules of buying; what cannot be read is reported and left out.

mod charges;
mod dowels;
mod hire;
mod stock;
mod supply;
mod surfaces;
mod words;

use std::collections::{BTreeMap, BTreeSet};

use stock::{bars, base, disposal, fiber, mesh, mix};
use supply::supply;
use surfaces::{color, finish, sealer};

use super::{Role, Rules};
use crate::input::book::{ItemKey, rates};
use crate::reading::{At, Fields, Node, Problem, Problems};

pub(in crate::input::book) fn read(book: &Fields<'_>, problems: &mut Problems) -> Rules {
    let mut rules = Rules {
        place: Some(book.heading()),
        ..Rules::default()
    };
    each(
        book,
        "mixes",
        problems,
        mix,
        &mut rules.mixes,
        &mut rules.broken,
    );
    each(
        book,
        "bases",
        problems,
        base,
        &mut rules.bases,
        &mut rules.broken,
    );
    each(
        book,
        "bars",
        problems,
        bars,
        &mut rules.bars,
        &mut rules.broken,
    );
    each(
        book,
        "mesh",
        problems,
        mesh,
        &mut rules.mesh,
        &mut rules.broken,
    );
    each(
        book,
        "fiber",
        problems,
        fiber,
        &mut rules.fiber,
        &mut rules.broken,
    );
    each(
        book,
        "dowels",
        problems,
        dowels::dowels,
        &mut rules.dowels,
        &mut rules.broken,
    );
    each(
        book,
        "disposal",
        problems,
        disposal,
        &mut rules.disposal,
        &mut rules.broken,
    );
    on_the_surface(book, &mut rules, problems);
    set_and_site(book, &mut rules, problems);
    rules.supply = book
        .required("supply", problems)
        .ok()
        .and_then(|node| supply(node, problems));
    rules.pump = book
        .node("pump")
        .and_then(|node| hire::pump(node, problems));
    rules.buggy = book
        .node("buggy")
        .and_then(|node| hire::buggy(node, problems));
    if let Ok(node) = book.required("use", problems) {
        rules.roles = roles(node, problems);
    }
    if let Ok(node) = book.required("rates", problems) {
        rules.rates = rates::read(node, problems);
    }
    rules
}

/// Finishes, colors and sealers.
fn on_the_surface(book: &Fields<'_>, rules: &mut Rules, problems: &mut Problems) {
    each(
        book,
        "finishes",
        problems,
        finish,
        &mut rules.surfaces.finishes,
        &mut rules.broken,
    );
    each(
        book,
        "colors",
        problems,
        color,
        &mut rules.surfaces.colors,
        &mut rules.broken,
    );
    each(
        book,
        "sealers",
        problems,
        sealer,
        &mut rules.surfaces.sealers,
        &mut rules.broken,
    );
}

/// Boxes set in slabs, and what the answers about a site cost.
fn set_and_site(book: &Fields<'_>, rules: &mut Rules, problems: &mut Problems) {
    each(
        book,
        "boxes",
        problems,
        crate::input::book::boxes::read,
        &mut rules.boxes,
        &mut rules.broken,
    );
    rules.site = crate::input::book::site::read(book, problems);
}

fn each<T>(
    book: &Fields<'_>,
    key: &str,
    problems: &mut Problems,
    read: impl Fn(&Node, &mut Problems) -> Option<T>,
    into: &mut BTreeMap<String, T>,
    broken: &mut BTreeSet<String>,
) {
    let Some(node) = book.node(key) else { return };
    for entry in node.entries(&format!("`{key}`"), problems) {
        match read(&entry.node, problems) {
            Some(one) => drop(into.insert(entry.key.clone(), one)),
            None => drop(broken.insert(entry.key.clone())),
        }
    }
}

fn roles(node: &Node, problems: &mut Problems) -> BTreeMap<Role, At<Option<ItemKey>>> {
    let mut roles = BTreeMap::new();
    for entry in node.entries("`use`", problems) {
        let Some(role) = Role::ALL.into_iter().find(|role| role.name() == entry.key) else {
            let keys = Role::ALL.map(Role::name);
            let problem = Problem::new("unknown-key", format!("`use` has no key `{}`", entry.key))
                .at(entry.key_place);
            problems.push(
                problem.help(match crate::reading::suggest::closest(&entry.key, keys) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => format!("its keys are {}", keys.join(", ")),
                }),
            );
            continue;
        };
        if let Ok(item) = entry.node.text("an item's name", problems) {
            let value = (item != "none").then(|| item.to_owned());
            roles.insert(
                role,
                At {
                    value,
                    place: entry.node.place,
                },
            );
        }
    }
    roles
}
