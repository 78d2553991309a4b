//! What the program prints, case by case, as somebody once read it and found it right.
//!
//! A case is a folder `tests/golden/<command>/<case>/` with the arguments in
//! `cmd` and what comes of them in `expected/`. Where it has an `input/`, the
//! program runs in a copy of it laid over `tests/golden/common/`; otherwise in
//! the repository. `BLESS=1` writes what is printed now: read it before you commit.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const EXPECTED: [&str; 3] = ["status", "stderr", "stdout"];

#[test]
fn the_program_prints_what_was_read_and_found_right() {
    let golden = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden");
    let bless = std::env::var_os("BLESS").is_some();
    let mut faults = Vec::new();
    let mut cases = 0;
    for command in folders(&golden) {
        if command.ends_with("common") {
            continue;
        }
        for case in folders(&command) {
            cases += 1;
            let printed = run(&case, &golden.join("common"));
            if bless {
                write(&case.join("expected"), &printed);
            }
            faults.extend(compare(&case, &printed));
        }
    }
    assert!(cases != 0, "no case in {}", golden.display());
    assert!(faults.is_empty(), "{}", faults.join("\n\n"));
}

/// The folders in `path`, in the order of their names.
pub fn folders(path: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(path).expect("a folder of cases");
    let mut found: Vec<PathBuf> = entries
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_dir())
        .collect();
    found.sort();
    found
}

/// Runs a case; what is empty, and a status of zero, is as good as nothing said.
pub fn run(case: &Path, common: &Path) -> BTreeMap<&'static str, String> {
    let input = case.join("input");
    let repository = Path::new(env!("CARGO_MANIFEST_DIR"));
    let here = if input.is_dir() {
        let name = case
            .strip_prefix(repository)
            .expect("a case of this repository");
        let copy = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        let _ = fs::remove_dir_all(&copy);
        lay(common, &copy);
        lay(&input, &copy);
        copy
    } else {
        repository.to_path_buf()
    };
    let cmd = fs::read_to_string(case.join("cmd")).unwrap_or_else(|_| "cost job.yaml".to_owned());
    let output = Command::new(env!("CARGO_BIN_EXE_flatwork"))
        .args(arguments(&cmd))
        .current_dir(&here)
        .output()
        .expect("the program runs");
    let text = |bytes: Vec<u8>| {
        let text = String::from_utf8(bytes).expect("UTF-8");
        text.replace(&here.display().to_string(), "<here>")
    };
    let status = output.status.code().expect("no signal");
    BTreeMap::from([
        ("status", format!("{status}\n")),
        ("stderr", text(output.stderr)),
        ("stdout", text(output.stdout)),
    ])
}

/// Split at spaces; what stands between single quotes is one argument.
fn arguments(cmd: &str) -> Vec<String> {
    let mut found = Vec::new();
    for (i, part) in cmd.trim().split('\'').enumerate() {
        if i % 2 == 1 {
            found.push(part.to_owned());
        } else {
            found.extend(part.split_whitespace().map(str::to_owned));
        }
    }
    found
}

/// Copies a folder of plain files over another.
fn lay(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("a folder for the copy");
    for entry in fs::read_dir(from).expect("a folder to copy") {
        let path = entry.expect("an entry").path();
        let name = path.file_name().expect("a name");
        fs::copy(&path, to.join(name)).expect("a plain file");
    }
}

pub fn write(expected: &Path, printed: &BTreeMap<&'static str, String>) {
    let _ = fs::remove_dir_all(expected);
    fs::create_dir_all(expected).expect("a folder for what is expected");
    for (name, text) in printed.iter().filter(|(_, text)| !text.is_empty()) {
        fs::write(expected.join(name), text).expect("what is expected");
    }
}

/// Everything that differs, and every file that expects nothing.
pub fn compare(case: &Path, printed: &BTreeMap<&'static str, String>) -> Vec<String> {
    let mut faults = Vec::new();
    let expected = case.join("expected");
    for (name, text) in printed {
        let wanted = fs::read_to_string(expected.join(name)).unwrap_or_default();
        if wanted != *text {
            faults.push(format!(
                "{}: {name} is not as expected\n{}",
                case.display(),
                difference(&wanted, text)
            ));
        }
    }
    let known = |path: &Path| EXPECTED.iter().any(|name| path.ends_with(name));
    let files = fs::read_dir(&expected).into_iter().flatten();
    for path in files.map(|entry| entry.expect("an entry").path()) {
        let empty = fs::metadata(&path).is_ok_and(|meta| meta.len() == 0);
        if !known(&path) || empty {
            faults.push(format!("{}: nothing answers to this file", path.display()));
        }
    }
    faults
}

/// The first line that differs.
fn difference(wanted: &str, found: &str) -> String {
    let (mut wanted, mut found) = (wanted.lines(), found.lines());
    for number in 1.. {
        let (want, get) = (wanted.next(), found.next());
        if want != get || want.is_none() {
            return format!(
                "line {number}\n  expected: {}\n  printed:  {}",
                want.unwrap_or("(the end)"),
                get.unwrap_or("(the end)")
            );
        }
    }
    String::new()
}
