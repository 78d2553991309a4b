//! The cost sheet as its user meets it: beside the takeoff, for the office on every page.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

/// A folder of this test's own, with the demo files in it.
fn folder(name: &str) -> PathBuf {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    for part in ["demo-quotes", "price-books"] {
        std::fs::create_dir_all(folder.join(part)).unwrap();
        for entry in std::fs::read_dir(root.join(part)).unwrap() {
            let path = entry.unwrap().path();
            if path.extension().is_some_and(|ending| ending == "yaml") {
                std::fs::copy(&path, folder.join(part).join(path.file_name().unwrap())).unwrap();
            }
        }
    }
    folder
}

fn cost(folder: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_flatwork"))
        .current_dir(folder)
        .args(["cost", "demo-quotes/garden-patio.yaml"])
        .args(arguments)
        .output()
        .expect("the program starts")
}

#[test]
fn it_lies_beside_the_takeoff_and_is_the_same_every_time() {
    let folder = folder("cost-sheet-same");
    let beside = folder.join("demo-quotes/garden-patio.cost.pdf");
    let output = cost(&folder, &["--pdf"]);
    assert!(output.status.success());
    assert_eq!(
        String::from_utf8_lossy(&output.stdout),
        "cost sheet  demo-quotes/garden-patio.cost.pdf\n"
    );
    let first = std::fs::read(&beside).unwrap();
    assert!(first.starts_with(b"%PDF-"));
    assert!(
        cost(&folder, &["--pdf", "-o", "again.pdf"])
            .status
            .success()
    );
    assert!(first == std::fs::read(folder.join("again.pdf")).unwrap());
}

#[test]
fn it_never_lands_on_a_file_it_is_made_from() {
    let folder = folder("cost-sheet-input");
    let job = folder.join("demo-quotes/garden-patio.yaml");
    let before = std::fs::read(&job).unwrap();
    for path in [
        "demo-quotes/garden-patio.yaml",
        "new.YML",
        "demo-quotes/../demo-quotes/garden-patio.yaml",
    ] {
        let output = cost(&folder, &["--pdf", "-o", path]);
        assert_eq!(output.status.code(), Some(1), "{path}");
        assert!(String::from_utf8_lossy(&output.stderr).contains("output-is-input"));
        assert!(output.stdout.is_empty());
    }
    assert_eq!(std::fs::read(&job).unwrap(), before);
    assert!(!folder.join("new.YML").exists());
}
