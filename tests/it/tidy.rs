//! The house rules that a machine can hold: floors, words and their floors, file lengths.
//!
//! Every rule is a function from a path and a text to faults, and is shown to
//! catch a planted fault.

use std::fs;

use crate::sources::{code_files, is_rust, our_files};

/// The floors in reading order: each uses only floors above it.
const FLOORS: &[&str] = &[
    "values",
    "geometry",
    "tables",
    "reading",
    "press",
    "input",
    "trade",
    "costing",
    "office",
    "advice",
    "documents",
    "outside",
];

/// All that lies at the top, beside what Git and Cargo make.
const TOP: &[&str] = &[
    ".ci",
    ".clippy.toml",
    ".git",
    ".gitignore",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "demo-quotes",
    "price-books",
    "src",
    "target",
    "templates",
    "tests",
];

const LONGEST: usize = 400;

const CLOCK_AND_DISK: &str = "the disk and the clock belong to one file";
const ROUNDING: &str = "round through values::rounding, so there is one rule";
const FLOATS: &str = "a binary float cannot hold a cent; decimals and whole numbers do";
const ORDER: &str = "its order could reach a page; use a BTreeMap or BTreeSet";
const PRINTING: &str = "only a command talks to the terminal";
const UNDONE: &str = "finish it or leave it out";

/// A word, the rooms it may stand in, and why.
const WORDS: &[(&str, &[&str], &str)] = &[
    (
        "serde_yaml",
        &["src/reading/"],
        "YAML is known to one floor",
    ),
    (
        "handlebars",
        &["src/documents/"],
        "templates are filled on one floor",
    ),
    ("printpdf", &["src/press/"], "PDF is known to one floor"),
    ("lopdf", &["src/press/"], "PDF is known to one floor"),
    (
        "clap",
        &["src/outside/"],
        "arguments are read in the commands",
    ),
    ("std::fs", &["src/outside/files"], CLOCK_AND_DISK),
    ("Local::now", &["src/outside/files"], CLOCK_AND_DISK),
    ("Utc::now", &["src/outside/files"], CLOCK_AND_DISK),
    ("SystemTime", &["src/outside/files"], CLOCK_AND_DISK),
    ("Instant::now", &["src/outside/files"], CLOCK_AND_DISK),
    (".round_dp(", &["src/values/"], ROUNDING),
    (".round_dp_with_strategy(", &["src/values/"], ROUNDING),
    (".round(", &["src/values/"], ROUNDING),
    (".rescale(", &["src/values/"], ROUNDING),
    (".trunc(", &["src/values/"], ROUNDING),
    (".ceil(", &["src/values/"], ROUNDING),
    (".floor(", &["src/values/"], ROUNDING),
    ("f32", FLOAT_ROOMS, FLOATS),
    ("f64", FLOAT_ROOMS, FLOATS),
    ("HashMap", &[], ORDER),
    ("HashSet", &[], ORDER),
    ("println!", &["src/outside/cli/"], PRINTING),
    ("eprintln!", &["src/outside/cli/"], PRINTING),
    ("print!", &["src/outside/cli/"], PRINTING),
    ("eprint!", &["src/outside/cli/"], PRINTING),
    ("todo!", &[], UNDONE),
    ("unimplemented!", &[], UNDONE),
    ("dbg!", &[], UNDONE),
    (".unwrap()", &[], "`expect` says why it holds"),
    (
        "from memory",
        &[],
        "say common practice, and in SOURCES.md what could not be read",
    ),
];

/// Pages are drawn in floats; the curve of strength leaves its file as days or two decimals.
const FLOAT_ROOMS: &[&str] = &[
    "src/press/",
    "src/documents/figures/",
    "src/trade/curing/strength.rs",
];

/// Unfinished work, in comments too. In halves, so that this file passes its own rule.
const MARKS: &[&str] = &[
    concat!("TO", "DO"),
    concat!("FIX", "ME"),
    concat!("XX", "X"),
];

/// Folders of one machine, which no other reader has.
const MACHINE: &[&str] = &[
    concat!("/", "home/"),
    concat!("/", "root/"),
    concat!("/", "tmp/"),
    concat!("/", "work/"),
];

/// `word` in `text`, not as a part of a longer name.
fn has_word(text: &str, word: &str) -> bool {
    let part = |c: char| c.is_alphanumeric() || c == '_';
    text.match_indices(word).any(|(at, _)| {
        let before = text[..at].chars().next_back().is_some_and(part);
        let after = text[at + word.len()..].chars().next().is_some_and(part);
        !(before && word.starts_with(part) || after && word.ends_with(part))
    })
}

/// The lines of code, numbered from one: no comments, and nothing after a module of tests begins.
fn code(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let end = text.find("#[cfg(test)]\nmod tests {").unwrap_or(text.len());
    text[..end]
        .lines()
        .enumerate()
        .map(|(number, line)| (number + 1, line.split("//").next().unwrap_or("").trim()))
}

/// A floor that uses a floor below it.
fn floor_faults(path: &str, text: &str) -> Vec<String> {
    let own = path.trim_start_matches("src/").split(['/', '.']).next();
    let Some(here) = FLOORS.iter().position(|floor| Some(*floor) == own) else {
        return Vec::new();
    };
    let mut faults = Vec::new();
    for (number, line) in code(text) {
        for below in &FLOORS[here + 1..] {
            for root in ["crate", "flatwork"] {
                if has_word(line, &format!("{root}::{below}")) {
                    faults.push(format!(
                        "{path}:{number}: {} uses `{below}`, a floor below it",
                        FLOORS[here]
                    ));
                }
            }
        }
        // A group would hide its floors from this check.
        if line.contains("crate::{") {
            faults.push(format!("{path}:{number}: one `use` for each floor"));
        }
    }
    faults
}

/// A word that belongs to other rooms.
fn word_faults(path: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for (number, line) in code(text) {
        for (word, rooms, why) in WORDS {
            if has_word(line, word) && !rooms.iter().any(|room| path.starts_with(room)) {
                faults.push(format!("{path}:{number}: `{word}`: {why}"));
            }
        }
    }
    faults
}

/// What holds for every file of text, tests and comments included.
fn text_faults(path: &str, text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let length = text.lines().count();
    if is_rust(path) {
        if length > LONGEST {
            faults.push(format!(
                "{path}: {length} lines; the longest file has {LONGEST}"
            ));
        }
        if !text.starts_with("//!") {
            faults.push(format!(
                "{path}: the first line says what the file is, with `//!`"
            ));
        }
    }
    for (number, line) in text.lines().enumerate() {
        for mark in MARKS.iter().filter(|mark| has_word(line, mark)) {
            faults.push(format!("{path}:{}: `{mark}`: {UNDONE}", number + 1));
        }
        for folder in MACHINE.iter().filter(|folder| has_folder(line, folder)) {
            faults.push(format!(
                "{path}:{}: `{folder}` is a folder of one machine",
                number + 1
            ));
        }
    }
    faults
}

/// A path that begins with `folder`: `../work/x` and `a/home/b` do not.
fn has_folder(line: &str, folder: &str) -> bool {
    line.match_indices(folder).any(|(at, _)| {
        let before = line[..at].chars().next_back();
        before.is_none_or(|c| !(c.is_alphanumeric() || ".-_/}<".contains(c)))
    })
}

fn top_faults<'a>(names: impl Iterator<Item = &'a str>) -> Vec<String> {
    names
        .filter(|name| !TOP.contains(name))
        .map(|name| format!("{name}: the top level holds only {}", TOP.join(" ")))
        .collect()
}

#[test]
fn every_file_keeps_the_rules() {
    let code = code_files();
    assert!(
        code.len() > 100,
        "only {} files of code were found",
        code.len()
    );
    let mut faults = Vec::new();
    for (path, text) in our_files() {
        faults.extend(text_faults(&path, &text));
    }
    for (path, text) in code {
        faults.extend(floor_faults(&path, &text));
        faults.extend(word_faults(&path, &text));
    }
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn the_top_level_is_as_agreed() {
    let names: Vec<String> = fs::read_dir(env!("CARGO_MANIFEST_DIR"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    let faults = top_faults(names.iter().map(String::as_str));
    assert!(faults.is_empty(), "\n{}\n", faults.join("\n"));
}

#[test]
fn the_floors_are_those_of_the_library() {
    let library = include_str!("../../src/lib.rs");
    let mut listed: Vec<&str> = FLOORS.to_vec();
    listed.sort_unstable();
    let declared: Vec<&str> = library
        .lines()
        .filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';'))
        .collect();
    assert_eq!(declared, listed);
}

#[test]
fn a_floor_that_looks_down_is_caught() {
    for (path, line, faults) in [
        ("src/trade/crew.rs", "use crate::costing::Prices;", 1),
        ("src/trade/crew.rs", "let x = flatwork::press::page();", 0),
        (
            "src/trade/crew.rs",
            "let x = flatwork::outside::files();",
            1,
        ),
        ("src/trade/crew.rs", "use crate::{costing, values};", 1),
        ("src/trade/crew.rs", "// crate::costing is below", 0),
        ("src/costing/mod.rs", "use crate::trade::order;", 0),
        ("src/values/mod.rs", "use crate::values_of::x;", 0),
        ("src/main.rs", "flatwork::run()", 0),
    ] {
        assert_eq!(floor_faults(path, line).len(), faults, "{path}: {line}");
    }
}

#[test]
fn every_word_out_of_its_room_is_caught() {
    for (word, rooms, _) in WORDS {
        let line = format!("    let x = y{word}z);", word = spaced(word));
        assert_eq!(word_faults("src/trade/any.rs", &line).len(), 1, "{line}");
        for room in *rooms {
            assert!(word_faults(room, &line).is_empty(), "{room}: {line}");
        }
    }
    assert!(word_faults("src/trade/any.rs", "let clapboard = 1;").is_empty());
    assert!(word_faults("src/trade/any.rs", "one(); // a f64 in words").is_empty());
    let tests = "one();\n#[cfg(test)]\nmod tests {\n x.unwrap()";
    assert!(word_faults("src/trade/any.rs", tests).is_empty());
}

/// A name stands free, a method hangs on what is before it.
fn spaced(word: &str) -> String {
    if word.starts_with('.') {
        word.to_owned()
    } else {
        format!(" {word} ")
    }
}

#[test]
fn long_unnamed_and_unfinished_files_are_caught() {
    let long = "//! Long.\n".to_owned() + &"x\n".repeat(LONGEST);
    assert_eq!(text_faults("src/a.rs", &long).len(), 1);
    assert!(text_faults("src/a.rs", &long[..long.len() - 2]).is_empty());
    assert_eq!(text_faults("src/a.rs", "use x;\n").len(), 1);
    for mark in MARKS {
        assert_eq!(text_faults("a.md", &format!("# {mark}: more")).len(), 1);
    }
    for folder in MACHINE {
        assert_eq!(text_faults("a.md", &format!("see `{folder}x`")).len(), 1);
        assert!(text_faults("a.md", &format!("see a{folder}x")).is_empty());
    }
    assert_eq!(top_faults(["src", "notes.md"].into_iter()).len(), 1);
}
