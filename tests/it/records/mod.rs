//! Jobs from signature to last payment, through the commands, on a folder of their own.

mod books;
mod cancelling;
mod changes;
mod choosing;
mod closing;
mod crowd;
mod escalation;
mod late;
mod laws;
mod progress;
mod published;
mod receipts;
mod refusals;
mod story;
mod year;

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use crate::support::words;

/// A business folder of this test's own.
pub struct Firm(PathBuf);

/// A book and a business with round figures, and three small jobs.
pub fn firm(name: &str) -> Firm {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("records")
        .join(name);
    let _ = std::fs::remove_dir_all(&folder);
    std::fs::create_dir_all(&folder).unwrap();
    let common = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/common");
    std::fs::copy(common.join("book.yaml"), folder.join("book.yaml")).unwrap();
    let business = std::fs::read_to_string(common.join("business.yaml")).unwrap();
    let business = business
        .replace(
            "margin floor: 15%}",
            "margin floor: 15%, tax: {on: sale, rate: 6%}}",
        )
        .replace(
            "deposit cap: 33%}",
            "deposit cap: 33%, right to cancel: yes}",
        );
    std::fs::write(
        folder.join("business.yaml"),
        business + "numbers: {pattern: YYYY-0000, start: 41}\n",
    )
    .unwrap();
    for (job, customer, size) in [
        ("one", "Ira Sample", "20 ft x 18 ft"),
        ("two", "Dana Example", "12 ft x 9 ft"),
        ("three", "Lee Invented", "30 ft x 4 ft"),
    ] {
        let mut text = format!("customer: {customer}, Quillhaven\nslabs: {{slab: {size}}}\n");
        if job == "one" {
            text.push_str("options:\n  - Mesh in it: {add: [mesh sheet: 10 sheets]}\n  - More boards: {add: [form board: 20 ft]}\n");
        }
        std::fs::write(folder.join(format!("{job}.yaml")), text).unwrap();
    }
    Firm(folder)
}

impl Firm {
    pub fn command(&self, line: &str) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_flatwork"));
        command.args(words(line));
        command.current_dir(&self.0);
        command
    }

    pub fn run(&self, line: &str) -> Output {
        self.command(line).output().unwrap()
    }

    /// Runs a command that has to go well; answers what it says.
    #[track_caller]
    pub fn done(&self, line: &str) -> String {
        let output = self.run(line);
        let said = String::from_utf8(output.stdout).unwrap();
        let wrong = String::from_utf8(output.stderr).unwrap();
        assert!(output.status.success(), "{line}\n{said}{wrong}");
        said
    }

    /// Runs a command that has to be refused for this reason.
    #[track_caller]
    pub fn refused(&self, line: &str, code: &str) -> String {
        let output = self.run(line);
        let wrong = String::from_utf8(output.stderr).unwrap();
        assert_eq!(output.status.code(), Some(1), "{line}\n{wrong}");
        assert!(wrong.contains(&format!("error[{code}]")), "{line}\n{wrong}");
        wrong
    }

    /// Names in the folder of records, hidden ones left out.
    pub fn records(&self) -> Vec<String> {
        let Ok(entries) = std::fs::read_dir(self.0.join("records")) else {
            return Vec::new();
        };
        let mut names: Vec<String> = entries
            .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
            .filter(|name| !name.starts_with('.'))
            .collect();
        names.sort();
        names
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }
}
