//! The house drawn from its own code: no file leans on one that leans on it, and rooms of a floor stand in order.
//!
//! A room is a file or folder right under a floor. The file that names the parts of a folder may use them
//! and they it, since it is what they have in common.

mod arrows;
mod order;

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use crate::sources::{code_files, is_rust, our_files};
use arrows::{House, words};
use order::ROOMS;

/// Names that more than two public types of one floor may have.
/// What a command is told is its `Arguments`.
const NAMES: &[(&str, &str)] = &[("outside", "Arguments")];

type Arrows<'a> = BTreeMap<(&'a str, &'a str), BTreeSet<String>>;

fn floor(file: &str) -> &str {
    file.split(['/', '.']).nth(1).unwrap_or("")
}

/// The room of a file, or nothing for the file of the floor itself.
fn room(file: &str) -> Option<&str> {
    let room = file.splitn(3, '/').nth(2)?.split(['/', '.']).next()?;
    (room != "mod").then_some(room)
}

/// Arrows within a floor, without those from a folder's own file to its parts.
fn inside_floors(house: &House) -> Arrows<'_> {
    let parts = |file: &str| {
        let folder = file.trim_end_matches("mod.rs").trim_end_matches(".rs");
        format!("{}/", folder.trim_end_matches('/'))
    };
    house
        .arrows()
        .into_iter()
        .filter(|((from, to), _)| floor(from) == floor(to) && !to.starts_with(&parts(from)))
        .collect()
}

fn tied((from, to): (&str, &str), names: &BTreeSet<String>) -> String {
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    format!("{from} takes {} from {to}", names.join(", "))
}

/// Rooms that use one which does not stand before them.
fn order_faults(arrows: &Arrows<'_>) -> Vec<String> {
    let mut faults = Vec::new();
    for ((from, to), names) in arrows {
        let (Some(here), Some(there)) = (room(from), room(to)) else {
            continue;
        };
        let rooms = ROOMS.iter().find(|(name, _)| *name == floor(from));
        let at = |room| rooms.and_then(|(_, rooms)| rooms.iter().position(|name| *name == room));
        let before = at(there).is_some_and(|there| at(here).is_none_or(|here| there < here));
        if here != there && !before {
            let tie = tied((from, to), names);
            faults.push(format!("{tie}: `{there}` does not stand before `{here}`"));
        }
    }
    faults
}

/// Files that lean on each other, each circle with the names that tie it.
fn circle_faults(arrows: &Arrows<'_>) -> Vec<String> {
    let mut leans: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (from, to) in arrows.keys() {
        leans.entry(from).or_default().push(to);
    }
    let reached = |file| {
        let (mut found, mut open) = (BTreeSet::new(), vec![file]);
        while let Some(file) = open.pop() {
            let next = leans.get(file).into_iter().flatten();
            open.extend(next.filter(|to| found.insert(**to)));
        }
        found
    };
    let reached: BTreeMap<&str, BTreeSet<&str>> =
        leans.keys().map(|file| (*file, reached(*file))).collect();
    let mut circles = BTreeSet::new();
    for (file, ends) in &reached {
        let back = |end: &&&str| reached.get(**end).is_some_and(|ends| ends.contains(file));
        let circle: BTreeSet<&str> = ends.iter().filter(back).copied().collect();
        let mut fault = format!("a circle of {} files:", circle.len());
        for ((from, to), names) in arrows {
            if circle.contains(from) && circle.contains(to) {
                write!(fault, "\n  {}", tied((from, to), names)).unwrap();
            }
        }
        if !circle.is_empty() {
            circles.insert(fault);
        }
    }
    circles.into_iter().collect()
}

/// `name.rs` beside `name/`, where the one way is `name/mod.rs`.
fn layout_faults<'a>(files: impl IntoIterator<Item = &'a str>) -> Vec<String> {
    let files: BTreeSet<&str> = files.into_iter().filter(|file| is_rust(file)).collect();
    let beside = |file: &&&str| {
        let folder = format!("{}/", file.trim_end_matches(".rs"));
        files.iter().any(|other| other.starts_with(&folder))
    };
    files
        .iter()
        .filter(beside)
        .map(|file| format!("{file}: move it to {}/mod.rs", file.trim_end_matches(".rs")))
        .collect()
}

/// A name that more than two public types of one floor have.
fn name_faults<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Vec<String> {
    let mut types: BTreeMap<(&str, String), Vec<&str>> = BTreeMap::new();
    for (file, text) in files {
        for next in words(text).windows(3) {
            if ["pub", ")"].contains(&next[0].as_str())
                && ["struct", "enum"].contains(&next[1].as_str())
                // In a macro a dollar sign stands for the name.
                && next[2] != "$"
            {
                let name = (floor(file), next[2].clone());
                types.entry(name).or_default().push(file);
            }
        }
    }
    types
        .iter()
        .filter(|((floor, name), files)| {
            files.len() > 2 && !NAMES.contains(&(*floor, name.as_str()))
        })
        .map(|((_, name), files)| format!("`{name}` is a type in {}", files.join(", ")))
        .collect()
}

#[test]
fn no_file_leans_on_one_that_leans_on_it_and_rooms_stand_in_order() {
    let files = code_files();
    let house = House::new(
        files
            .iter()
            .map(|(file, text)| (file.as_str(), text.as_str())),
    );
    let arrows = inside_floors(&house);
    assert!(
        arrows.len() > 500,
        "only {} arrows were found",
        arrows.len()
    );
    let mut faults = circle_faults(&arrows);
    faults.extend(order_faults(&arrows));
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn the_order_names_rooms_that_stand_and_are_used() {
    let files = code_files();
    let house = House::new(
        files
            .iter()
            .map(|(file, text)| (file.as_str(), text.as_str())),
    );
    let arrows = inside_floors(&house);
    let used: BTreeSet<(&str, &str)> = arrows
        .keys()
        .filter(|(from, to)| room(from).is_some() && room(from) != room(to))
        .filter_map(|(_, to)| Some((floor(to), room(to)?)))
        .collect();
    let listed = ROOMS
        .iter()
        .flat_map(|(floor, rooms)| rooms.iter().map(|room| (*floor, *room)));
    let idle: Vec<_> = listed.filter(|room| !used.contains(room)).collect();
    assert!(idle.is_empty(), "no room uses {idle:?}");
}

#[test]
fn modules_are_laid_out_in_one_way() {
    let files = our_files();
    let faults = layout_faults(files.iter().map(|(file, _)| file.as_str()));
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn types_of_a_floor_are_told_apart_by_their_names() {
    let files = code_files();
    let faults = name_faults(
        files
            .iter()
            .map(|(file, text)| (file.as_str(), text.as_str())),
    );
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn planted_circles_and_rooms_out_of_order_are_caught() {
    #[track_caller]
    fn case(files: &[(&str, &str)], circles: usize, out_of_order: usize) {
        let common = [
            ("src/lib.rs", "mod trade; mod values;"),
            ("src/values/mod.rs", "mod money;"),
            (
                "src/trade/mod.rs",
                "mod measure; mod order; mod crew; pub use crew::{Crew, hours};",
            ),
        ];
        let house = House::new(common.into_iter().chain(files.iter().copied()));
        let arrows = inside_floors(&house);
        assert_eq!(circle_faults(&arrows).len(), circles, "{arrows:?}");
        assert_eq!(order_faults(&arrows).len(), out_of_order, "{arrows:?}");
    }

    let (measure, order, crew) = (
        "src/trade/measure.rs",
        "src/trade/order/mod.rs",
        "src/trade/crew.rs",
    );
    case(&[(order, "use super::measure::Area;"), (measure, "")], 0, 0);
    // Back, in each of the ways a name can be taken.
    for text in [
        "use crate::trade::order::Need;",
        "use super::{order::{self, Need as Other}};",
        "use super::order; fn f() { order::needs() }",
        "fn f(need: super::order::Need) {}",
        "fn f<'a>(c: char) -> bool { c == '\"' || crate::trade::order::needs(c) }",
    ] {
        case(&[(measure, text), (order, "")], 0, 1);
        case(
            &[(measure, text), (order, "use super::measure::Area;")],
            1,
            1,
        );
    }
    // Through the parent that hands it on, and from a part of a folder.
    let part = (
        "src/trade/order/list.rs",
        "use crate::trade::{Crew, hours};",
    );
    case(&[(order, "mod list;"), part, (crew, "")], 0, 1);
    case(
        &[
            (order, "mod list;"),
            part,
            (crew, "use super::order::list::List;"),
        ],
        1,
        1,
    );
    // A folder's own file and its parts have each other.
    let part = ("src/trade/order/list.rs", "use super::Need;");
    case(
        &[
            (
                order,
                "mod list; pub use list::List; fn f() { list::new() }",
            ),
            part,
        ],
        0,
        0,
    );
    // What is no use: a comment, a text, a test, another floor.
    for text in [
        "// crate::trade::crew::Crew\n/* super::crew::Crew */",
        "fn f() -> &str { r#\"super::crew::\"Crew\"# }",
        "#[cfg(test)]\nmod tests { use crate::trade::crew::Crew; }",
        "#[cfg(test)] use super::crew::Crew;",
        "use crate::values::money::Money;",
    ] {
        case(
            &[(measure, text), (crew, ""), ("src/values/money.rs", "")],
            0,
            0,
        );
    }
    // A room that is not in the list is used by none.
    case(
        &[(crew, "use super::tidy::Rule;"), ("src/trade/tidy.rs", "")],
        0,
        0,
    );
}

#[test]
fn planted_layouts_and_names_are_caught() {
    let faults = layout_faults(["src/a.rs", "src/a/b.rs", "src/ab/mod.rs", "src/a.md"]);
    assert_eq!(faults, ["src/a.rs: move it to src/a/mod.rs"]);
    let row = "pub struct Row { text: &str }";
    let files = [
        ("src/x/a.rs", row),
        ("src/x/b.rs", row),
        ("src/y/c.rs", row),
    ];
    assert!(name_faults(files).is_empty());
    let third = (
        "src/x/d.rs",
        "pub enum Row {}\n#[cfg(test)]\nmod tests { pub struct Part; }",
    );
    assert_eq!(
        name_faults(files.into_iter().chain([third])),
        ["`Row` is a type in src/x/a.rs, src/x/b.rs, src/x/d.rs"]
    );
}
