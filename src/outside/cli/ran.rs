//! How a command ends: what it says, or the sentence that goes with another exit status.

use std::io::Write as _;
use std::process::ExitCode;

use crate::outside::files::Files;
use crate::reading::{Reported, caret};

/// What the terminal reads in the end, or why there is another end.
pub(super) type Ran = Result<String, Stop>;

/// An end that is not fine; none of them goes without a sentence.
#[derive(Debug)]
pub(super) enum Stop {
    /// Problems in what was written, each with its place: exit status 1.
    Problems(Reported),
    /// What was looked for and found, in words: exit status 1.
    Found(String),
    /// What the disk refused, in words: exit status 2.
    Disk(String),
}

impl From<Reported> for Stop {
    fn from(reported: Reported) -> Self {
        Self::Problems(reported)
    }
}

/// Exit status: 0 fine, 1 problems found in the input, 2 could not run.
pub(super) const FOUND: u8 = 1;
pub(super) const COULD_NOT_RUN: u8 = 2;

/// Runs a command with its files, prints what it says and every problem.
pub(super) fn ran(command: impl FnOnce(&mut Files) -> Ran) -> ExitCode {
    let mut files = Files::default();
    let status = match command(&mut files) {
        Ok(said) => {
            say(&said);
            ExitCode::SUCCESS
        }
        Err(Stop::Problems(_)) => ExitCode::from(FOUND),
        Err(Stop::Found(said)) => {
            say(&said);
            ExitCode::from(FOUND)
        }
        Err(Stop::Disk(said)) => {
            eprint!("{said}");
            ExitCode::from(COULD_NOT_RUN)
        }
    };
    let count = files.problems.len();
    if count == 0 {
        return status;
    }
    eprint!(
        "{}",
        caret::show_all(&files.problems, "error", &files.sources)
    );
    let word = if count == 1 { "problem" } else { "problems" };
    eprintln!("\n{count} {word} found; nothing was written");
    ExitCode::from(FOUND)
}

/// Prints; a reader that has seen enough, such as `head`, closes the pipe, and that is no mistake.
pub(super) fn say(text: &str) {
    let _ = std::io::stdout().write_all(text.as_bytes());
}
