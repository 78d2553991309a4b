//! README.md and DEVELOPERS.md hold: commands run, paths exist, tables of keys are the code's.
//!
//! `BLESS=1 cargo test docs` rewrites the tables of keys and the shown output.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use flatwork::inside::input::{
    book::{PriceBook, import::Mapping},
    business::Business,
    change::ChangeWritten,
    job::JobWritten,
    progress::ProgressWritten,
};
use flatwork::inside::reading::{FieldTable, Group as _, guide};

use crate::support::words;

const GUIDES: [&str; 2] = ["README.md", "DEVELOPERS.md"];

/// What the owner writes; every group of keys stands below one of them.
const FILES: [&FieldTable; 6] = [
    JobWritten::TABLE,
    Business::TABLE,
    PriceBook::TABLE,
    Mapping::TABLE,
    ChangeWritten::TABLE,
    ProgressWritten::TABLE,
];

/// Every table of keys, each once.
fn tables() -> Vec<&'static FieldTable> {
    let mut found: Vec<&FieldTable> = FILES.to_vec();
    let mut next = 0;
    while let Some(table) = found.get(next) {
        for below in table.below() {
            if !found.contains(&below) {
                found.push(below);
            }
        }
        next += 1;
    }
    found
}

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn guide_text(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap()
}

fn blessing() -> bool {
    std::env::var_os("BLESS").is_some()
}

/// `text` with what stands between the first `from` and the next `to` replaced.
fn replaced(text: &str, from: &str, to: &str, new: &str) -> String {
    let start = text
        .find(from)
        .unwrap_or_else(|| panic!("the guide has no `{from}`"))
        + from.len();
    let end = start + text[start..].find(to).expect("the block ends");
    format!("{}{new}{}", &text[..start], &text[end..])
}

/// README.md as it ought to be: every table of keys, and what the commands print that are shown.
fn due(text: &str, printed: &Printed) -> String {
    let mut due = text.to_owned();
    for table in tables() {
        let from = format!("<!-- keys: {} -->\n", table.name);
        due = replaced(&due, &from, "<!-- end -->", &guide::markdown(table));
    }
    let shown = text.lines().filter_map(|line| {
        line.strip_prefix("<!-- shows: ")
            .and_then(|line| line.strip_suffix(" -->"))
    });
    for line in shown {
        let output = printed.get(line).map_or("", String::as_str);
        let from = format!("<!-- shows: {line} -->\n```text\n");
        due = replaced(&due, &from, "```", output);
    }
    due
}

/// A code block: the comment before it, its language, its lines.
struct Block {
    comment: String,
    language: String,
    body: String,
}

fn blocks(text: &str) -> Vec<Block> {
    let mut found = Vec::new();
    let mut lines = text.lines();
    let mut before = "";
    while let Some(line) = lines.next() {
        if let Some(language) = line.strip_prefix("```") {
            let body = lines.by_ref().take_while(|line| *line != "```");
            found.push(Block {
                comment: before.to_owned(),
                language: language.to_owned(),
                body: body.flat_map(|line| [line, "\n"]).collect(),
            });
        }
        before = line;
    }
    found
}

/// Copies a folder; what earlier runs left in it is copied too and does no harm.
fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            fs::copy(entry.path(), target).unwrap();
        }
    }
}

/// Runs a line of a guide; what it printed, or why it cannot be believed.
fn run(line: &str, folder: &Path) -> Result<String, String> {
    let words = words(line);
    let arguments = match words[..] {
        // Running the tests within the tests would never end.
        ["cargo", "test" | "bench", ..] => return Ok(String::new()),
        ["cp", "-r", from, to] => {
            copy(&folder.join(from), &folder.join(to));
            return Ok(String::new());
        }
        ["cargo", "run", "--release", "--", ref rest @ ..] | ["flatwork", ref rest @ ..] => rest,
        _ => return Err(format!("`{line}`: this test does not know how to run it")),
    };
    let done = Command::new(env!("CARGO_BIN_EXE_flatwork"))
        .args(arguments)
        .current_dir(folder)
        .output()
        .expect("the program starts");
    if done.status.success() {
        Ok(String::from_utf8(done.stdout).expect("the program prints text"))
    } else {
        let said = String::from_utf8_lossy(&done.stderr);
        Err(format!("`{line}`: {}\n{said}", done.status))
    }
}

/// What the lines of a guide printed.
type Printed = BTreeMap<String, String>;

/// Runs the blocks of a guide in order; how many lines, what each printed, and all faults.
fn run_all(text: &str, folder: &Path) -> (usize, Printed, Vec<String>) {
    let (mut ran, mut shown, mut faults) = (0, Printed::new(), Vec::new());
    for block in blocks(text) {
        if let Some(name) = block.comment.strip_prefix("<!-- file: ") {
            let name = name.trim_end_matches(" -->");
            fs::write(folder.join(name), &block.body).unwrap();
        }
        if block.language != "sh" {
            continue;
        }
        for line in block.body.lines() {
            ran += 1;
            match run(line, folder) {
                Ok(output) => drop(shown.insert(line.to_owned(), output)),
                Err(fault) => faults.push(fault),
            }
        }
    }
    (ran, shown, faults)
}

/// A fresh folder with the demos, as someone has it who just got the program.
fn fresh(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    if folder.exists() {
        fs::remove_dir_all(&folder).unwrap();
    }
    for part in ["demo-quotes", "price-books"] {
        copy(&root().join(part), &folder.join(part));
    }
    folder
}

/// Words in backquotes and targets of links that look like paths of this project.
fn paths(text: &str) -> Vec<String> {
    let outside_blocks: String = text
        .split("```")
        .enumerate()
        .filter(|(i, _)| i % 2 == 0)
        .map(|(_, part)| part)
        .collect();
    let quoted = outside_blocks.split('`').skip(1).step_by(2);
    let linked = outside_blocks
        .split("](")
        .skip(1)
        .filter_map(|rest| rest.split(')').next());
    let flow = text
        .split_whitespace()
        .filter(|word| word.starts_with("src/"));
    quoted
        .chain(linked)
        .chain(flow)
        .map(|word| word.trim_matches(['`', ',', '.', ')', '(', ';', ':']))
        .filter(|word| is_path(word))
        .map(str::to_owned)
        .collect()
}

fn is_path(word: &str) -> bool {
    let tops = ["src", "tests", "templates", "demo-quotes", "price-books"];
    let named = ["LICENSE-MIT", "LICENSE-APACHE"].contains(&word);
    let ends = [".md", ".rs", ".toml", ".lock"]
        .iter()
        .any(|end| word.ends_with(end));
    let top = word
        .split('/')
        .next()
        .is_some_and(|top| tops.contains(&top));
    let written = Path::new(word)
        .extension()
        .is_some_and(|ending| ending == "pdf");
    !word.contains([' ', '*']) && !written && (named || ends || top)
}

#[test]
fn every_command_shown_runs_and_every_table_is_the_codes() {
    for name in GUIDES {
        let text = guide_text(name);
        let folder = fresh(&format!("guide-{name}"));
        let (ran, output, faults) = run_all(&text, &folder);
        assert!(faults.is_empty(), "{name}:\n{}", faults.join("\n"));
        if name != "README.md" {
            continue;
        }
        assert!(ran > 10, "only {ran} commands were found in {name}");
        let due = due(&text, &output);
        if blessing() {
            fs::write(root().join(name), &due).unwrap();
        } else {
            let differs = text.lines().zip(due.lines()).find(|(is, due)| is != due);
            assert!(
                text == due,
                "{name} is not what the code says; first {differs:?}; BLESS=1 rewrites it"
            );
        }
        assert!(folder.join("demo-quotes/garden-patio.pdf").exists());
        assert!(folder.join("my-quotes/first.pdf").exists());
        let owed = "flatwork owed --on 2026-07-20 --in demo-quotes";
        let paid_up = "Nothing is owed.\n".to_owned();
        assert_eq!(run(owed, &folder), Ok(paid_up), "{name} pays what it bills");
    }
}

#[test]
fn every_path_named_exists() {
    for name in GUIDES {
        let named = paths(&guide_text(name));
        assert!(named.len() > 5, "{name} names only {named:?}");
        let missing: Vec<&String> = named
            .iter()
            .filter(|path| !root().join(path).exists())
            .collect();
        assert!(missing.is_empty(), "{name} names {missing:?}");
    }
}

#[test]
fn a_planted_fault_is_caught() {
    let folder = fresh("planted");
    let guide = "```sh\nflatwork quote demo-quotes/none.yaml\nflatwork check demo-quotes/garden-patio.yaml\nrm x\n```\n";
    let (ran, _, faults) = run_all(guide, &folder);
    assert_eq!((ran, faults.len()), (3, 2), "{faults:?}");
    assert_eq!(
        paths("see `src/none.rs`, [x](tests/none.png) and `cost FILE`\n```\n  src/no\n```"),
        ["src/none.rs", "tests/none.png", "src/no"]
    );
    let text = guide_text("README.md");
    let wrong = text.replacen("| `slabs` |", "| `slab` |", 1);
    assert_ne!(wrong, text);
    assert_eq!(due(&wrong, &Printed::new()), due(&text, &Printed::new()));
}

#[test]
fn an_editor_finds_the_keys_of_every_file() {
    let folder = root().join("demo-quotes/keys");
    for table in FILES {
        let (_, noun) = table.name.split_once(' ').expect("an article");
        let file = folder.join(format!("{}.json", noun.replace(' ', "-")));
        let due = format!("{:#}\n", guide::schema(table));
        if blessing() {
            fs::create_dir_all(&folder).unwrap();
            fs::write(&file, &due).unwrap();
        }
        let kept = fs::read_to_string(&file).unwrap_or_default();
        assert!(
            kept == due,
            "{file:?} is not what the code says; BLESS=1 rewrites it"
        );
    }
}
