//! The demo firm from spring to autumn: what `reprice` says as prices move and time goes by.
//!
//! `BLESS=1` writes what is printed now: read it before you commit.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::support::words;

const JOBS: [&str; 6] = [
    "garden-patio",
    "front-walk",
    "carport-and-walk",
    "workshop-slab",
    "sidewalk-panels",
    "stone-terrace",
];

/// Day by day; a line that begins with a star is shown in the story.
const YEAR: &str = "
* reprice demo-quotes --on 2026-05-05
accept 2026-0003 --by Jo --on 2026-05-08 --in demo-quotes
decline 2026-0005 --because price --on 2026-05-09 --in demo-quotes
* reprice demo-quotes --on 2026-05-12 --what-if 'ready-mix 4000 air=+15%'
book set 'ready-mix 4000 air' 204.00 --from 2026-05-20 --book price-books/river-road.yaml
book set 'crushed stone' 41.00 --from 2026-05-20 --book price-books/river-road.yaml
* reprice demo-quotes --on 2026-05-20 --room 'ready-mix 4000 air'
* reprice demo-quotes --on 2026-05-20 --issue 2026-0006 --tell
accept 2026-0006 --by Alex --with Broomed --on 2026-05-26 --in demo-quotes
* reprice demo-quotes --on 2026-06-08
* reprice demo-quotes --on 2026-06-20 --book price-books/far-bank.yaml
* reprice demo-quotes --on 2026-09-01 --issue 2026-0002 --tell
* reprice demo-quotes --on 2026-09-02
";

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        if entry.file_type().unwrap().is_file() {
            fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
        }
    }
}

fn run(folder: &Path, line: &str) -> String {
    let mut command = Command::new(env!("CARGO_BIN_EXE_flatwork"));
    command.args(words(line));
    let done = command.current_dir(folder).output().unwrap();
    let wrong = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{line}\n{wrong}");
    String::from_utf8(done.stdout).unwrap()
}

#[test]
fn a_year_of_prices() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("seasons");
    let _ = fs::remove_dir_all(&folder);
    for part in ["demo-quotes", "price-books"] {
        copy(&here.join(part), &folder.join(part));
    }
    for job in JOBS {
        let line = format!("quote demo-quotes/{job}.yaml --issue --on 2026-05-04");
        run(&folder, &line);
    }
    let mut found = String::new();
    for line in YEAR.lines().filter(|line| !line.is_empty()) {
        let shown = line.strip_prefix("* ");
        let printed = run(&folder, shown.unwrap_or(line));
        let _ = writeln!(found, "$ flatwork {}", shown.unwrap_or(line));
        if shown.is_some() {
            found.push_str(&printed);
        }
        found.push('\n');
    }
    let path = here.join("tests/it/seasons.txt");
    if std::env::var_os("BLESS").is_some() {
        fs::write(&path, &found).unwrap();
    }
    let wanted = fs::read_to_string(&path).unwrap_or_default();
    let apart = wanted.lines().zip(found.lines()).find(|(a, b)| a != b);
    assert!(wanted == found, "first difference: {apart:?}");
}
