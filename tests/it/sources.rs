//! The files that are written here, and which of them are the program itself.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// Every file that is written here, with its path from the top.
pub fn our_files() -> Vec<(String, String)> {
    let mut found = Vec::new();
    for folder in ["src", "tests", "templates", "demo-quotes", "price-books"] {
        files(folder, &mut found);
    }
    for name in ["README.md", "DEVELOPERS.md", "Cargo.toml"] {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(name);
        found.push((name.to_owned(), fs::read_to_string(path).unwrap()));
    }
    found.sort();
    found
}

/// The files of the program itself, without modules of tests.
pub fn code_files() -> Vec<(String, String)> {
    let mut found = our_files();
    let rooms: BTreeSet<String> = found
        .iter()
        .flat_map(|(path, text)| test_rooms(path, text))
        .collect();
    found.retain(|(path, _)| path.starts_with("src/") && is_rust(path) && !is_test(path, &rooms));
    found
}

pub fn is_rust(path: &str) -> bool {
    Path::new(path)
        .extension()
        .is_some_and(|ending| ending == "rs")
}

/// The files and folders (without ending) that are modules of tests only.
fn test_rooms(path: &str, text: &str) -> Vec<String> {
    let folder = match path.rsplit_once('/') {
        Some((folder, "mod.rs" | "lib.rs" | "main.rs")) => folder.to_owned(),
        _ => path.trim_end_matches(".rs").to_owned(),
    };
    text.split("#[cfg(test)]\n")
        .skip(1)
        .filter_map(|after| {
            let (name, _) = after.lines().next()?.split_once(';')?;
            let (_, name) = name.split_once("mod ")?;
            Some(format!("{folder}/{name}"))
        })
        .collect()
}

fn is_test(path: &str, rooms: &BTreeSet<String>) -> bool {
    rooms.iter().any(|room| {
        path.strip_prefix(room.as_str())
            .is_some_and(|rest| rest == ".rs" || rest.starts_with('/'))
    })
}

/// Every text file under the folders that are ours, with its path from the top.
fn files(folder: &str, found: &mut Vec<(String, String)>) {
    let entries = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join(folder))
        .unwrap_or_else(|error| panic!("{folder}: {error}"));
    for entry in entries {
        let entry = entry.unwrap();
        let name = entry.file_name().into_string().unwrap();
        let path = format!("{folder}/{name}");
        if entry.file_type().unwrap().is_dir() {
            files(&path, found);
        } else if let Ok(text) = fs::read_to_string(entry.path()) {
            found.push((path, text));
        }
    }
}

#[test]
fn rooms_of_tests_are_found() {
    let text = "#[cfg(test)]\nmod laws;\nmod other;\n";
    let rooms: BTreeSet<String> = test_rooms("src/a/mod.rs", text).into_iter().collect();
    assert!(is_test("src/a/laws.rs", &rooms) && is_test("src/a/laws/x.rs", &rooms));
    assert!(!is_test("src/a/other.rs", &rooms) && !is_test("src/a/lawsuit.rs", &rooms));
    assert_eq!(test_rooms("src/a/b.rs", text), ["src/a/b/laws"]);
}
