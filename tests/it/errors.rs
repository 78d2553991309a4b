//! The error gallery: one folder for every message the program can print.
//!
//! `tests/errors/<code>/` holds an `input/` that causes the message, laid over
//! `tests/golden/common/`, and what is expected. Each case ends with status 1,
//! prints nothing else and writes nothing. `BLESS=1` writes what is printed now:
//! read it as somebody would who is tired and has a customer waiting.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use crate::golden::{compare, folders, run, write};
use crate::sources::code_files;

/// Codes that no small takeoff can cause, and why.
const UNSHOWN: &[(&str, &str)] = &[
    (
        "file-too-large",
        "the case would be a file of 16 MB; a unit test makes one",
    ),
    (
        "unreadable-file",
        "needs a file without permission, which the superuser can read all the same",
    ),
    (
        "picture-outside",
        "needs a link that leads out of the folder; a case is plain files",
    ),
    ("bad-record", RECORDS),
    ("billed-too-much", RECORDS),
    ("change-accepted-already", RECORDS),
    ("all-billed", RECORDS),
    ("already-accepted", RECORDS),
    ("already-closed", RECORDS),
    ("billed-already", RECORDS),
    ("bad-days", RECORDS),
    ("change-declined-already", RECORDS),
    ("choice-missing", RECORDS),
    ("empty-change", RECORDS),
    ("not-in-change", RECORDS),
    ("untitled-work", RECORDS),
    ("chosen-twice", RECORDS),
    ("credit-too-high", RECORDS),
    ("invoice-in-use", RECORDS),
    ("invoice-void", RECORDS),
    ("issued-already", RECORDS),
    ("not-open", "tests/it/reissue.rs"),
    ("one-folder", "tests/it/reissue.rs"),
    ("pour-gone-by", "tests/it/reissue.rs"),
    ("no-such-change", RECORDS),
    ("no-such-invoice", RECORDS),
    ("no-such-option", RECORDS),
    ("no-such-payment", RECORDS),
    ("no-such-quote", RECORDS),
    ("no-such-stage", RECORDS),
    ("no-clause", RECORDS),
    ("not-accepted", RECORDS),
    ("below-billed", RECORDS),
    ("line-missing", RECORDS),
    ("line-twice", RECORDS),
    ("over-contract", RECORDS),
    ("over-value", RECORDS),
    ("released-too-much", RECORDS),
    ("values-not-contract", RECORDS),
    ("nothing-to-bill", RECORDS),
    ("nothing-to-refund", RECORDS),
    ("quote-expired", RECORDS),
    ("returned-twice", RECORDS),
    ("which-option", RECORDS),
    (
        "unreadable-records",
        "needs a folder without permission, which the superuser can read all the same",
    ),
    (
        "unwritable-records",
        "needs a folder without permission, which the superuser can write all the same",
    ),
    (
        "unwritable-book",
        "needs a file without permission, which the superuser can write all the same",
    ),
    (
        "not-filed",
        "needs a disk that fails; `records::crowd` has one",
    ),
    (
        "pdf-not-filed",
        "needs a disk that fails; `records::crowd` has one",
    ),
    ("no-business", "every case has one; a test below has none"),
    ("not-a-number", NUMBERS),
    ("number-too-long", NUMBERS),
    (
        "unknown-mesh",
        "published styles by name; the book names its own so far",
    ),
    (
        "not-yaml",
        "what no other message of the YAML reader explains; nobody has met it",
    ),
    (
        "cannot-set-page",
        "caused by a quote's words, not by a reader; the page tests cause it",
    ),
];

const NUMBERS: &str = "written for amounts of money, which do not ask it yet";
const RECORDS: &str = "needs a job on record; the tests of `records` cause it and look for it";

fn gallery() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/errors")
}

#[test]
fn every_message_is_as_it_was_read() {
    let common = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/common");
    let mut faults = Vec::new();
    for case in folders(&gallery()) {
        let printed = run(&case, &common);
        if std::env::var_os("BLESS").is_some() {
            write(&case.join("expected"), &printed);
        }
        faults.extend(compare(&case, &printed));
        let name = case.file_name().unwrap().to_string_lossy().into_owned();
        if printed["status"] != "1\n" {
            faults.push(format!(
                "{name}: ends with status {}",
                printed["status"].trim()
            ));
        }
        if !printed["stdout"].is_empty() {
            faults.push(format!("{name}: prints more than problems"));
        }
        if !name.starts_with("all-") && !printed["stderr"].contains(&format!("[{name}]")) {
            faults.push(format!(
                "{name}: does not show its own message\n{}",
                printed["stderr"]
            ));
        }
        if !printed["stderr"].contains(" help: ") {
            faults.push(format!("{name}: does not say what to do"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n\n"));
}

#[test]
fn a_takeoff_without_a_business_is_told_so() {
    let folder = std::env::temp_dir().join(format!("flatwork-no-business-{}", std::process::id()));
    fs::create_dir_all(&folder).unwrap();
    fs::write(
        folder.join("job.yaml"),
        "customer: Ira Sample\nslabs: {slab: 9 ft x 9 ft}\n",
    )
    .unwrap();
    let output = std::process::Command::new(env!("CARGO_BIN_EXE_flatwork"))
        .args(["cost", "job.yaml"])
        .current_dir(&folder)
        .output()
        .unwrap();
    fs::remove_dir_all(&folder).unwrap();
    assert_eq!(output.status.code(), Some(1));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(
        said.contains("error[no-business]")
            && said.contains("help: copy the one of the demo quotes"),
        "{said}"
    );
}

#[test]
fn every_code_of_the_program_has_its_folder() {
    let code = code_files();
    // Advice is no error: its messages have tests of their own.
    let errors = code
        .iter()
        .filter(|(path, _)| !path.starts_with("src/advice/"));
    let codes: BTreeSet<String> = errors.flat_map(|(_, text)| codes_in(text)).collect();
    assert!(40 < codes.len(), "the codes were not found: {codes:?}");
    let shown: BTreeSet<String> = folders(&gallery())
        .iter()
        .map(|case| case.file_name().unwrap().to_string_lossy().into_owned())
        .collect();
    let missing: Vec<&String> = codes
        .iter()
        .filter(|code| {
            !shown.contains(*code) && !UNSHOWN.iter().any(|(unshown, _)| unshown == code)
        })
        .collect();
    assert!(
        missing.is_empty(),
        "no folder in tests/errors for {missing:?}"
    );
    // A code may reach its message through a table, so any mention in quotes keeps its folder.
    let all: String = code.into_iter().map(|(_, text)| text).collect();
    let gone: Vec<&String> = shown
        .iter()
        .filter(|case| !case.starts_with("all-") && !all.contains(&format!("\"{case}\"")))
        .collect();
    assert!(gone.is_empty(), "nothing prints {gone:?} any more");
}

/// The codes given to problems and unreadable values in the part of a file that is not its tests.
fn codes_in(text: &str) -> Vec<String> {
    let text = text.split("#[cfg(test)]").next().unwrap_or_default();
    let mut found = Vec::new();
    for opening in [
        "Problem::new(",
        "Unreadable::new(",
        "refuse(",
        "slip(",
        "code:",
    ] {
        for part in text.split(opening).skip(1) {
            if let Some(code) = part
                .trim_start()
                .strip_prefix('"')
                .and_then(|rest| rest.split('"').next())
                && code.contains('-')
                && code
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
            {
                found.push(code.to_owned());
            }
        }
    }
    found.extend(declared_in(text));
    found
}

/// The codes of phrases, which name what the guide says first, and of words.
fn declared_in(text: &str) -> Vec<String> {
    let literal = |opening: &'static str, number: usize| {
        let parts = text.split(opening).skip(1);
        parts.filter_map(move |part| part.split('"').nth(2 * number - 1))
    };
    let phrases = literal("phrase!(\n    ", 2);
    let words = literal("words! {\n    ", 1);
    let codes = phrases.chain(words).filter(|code| code.contains('-'));
    codes.map(str::to_owned).collect()
}

#[test]
fn a_code_is_found_where_a_message_is_made() {
    assert_eq!(codes_in("Problem::new(\n    \"no-kind\",\n"), ["no-kind"]);
    assert_eq!(codes_in("Unreadable { code: \"no-kind\" }"), ["no-kind"]);
    assert_eq!(
        codes_in("#[cfg(test)] Problem::new(\"no-kind\""),
        Vec::<String>::new()
    );
    let phrase = "phrase!(\n    Days,\n    \"days\",\n    \"bad-days\",\n";
    assert_eq!(codes_in(phrase), ["bad-days"]);
    let words = "words! {\n    /// Lids.\n    enum Lid(\"no-lid\", \"not `{}`\", choose) {\n";
    assert_eq!(codes_in(words), ["no-lid"]);
}
