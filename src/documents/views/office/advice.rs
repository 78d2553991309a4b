//! Advice for the terminal: what is worth a second look before a quote goes out.

use std::path::Path;

use crate::reading::{Problem, Sources, caret};

/// Each with its place.
pub fn told(found: &[Problem], sources: &Sources) -> String {
    let shown = found.iter().map(|one| caret::show(one, "advice", sources));
    shown.map(|one| one + "\n").collect()
}

/// The same, and how much there is of a takeoff.
pub fn checked(file: &Path, found: &[Problem], sources: &Sources) -> String {
    let count = found.len();
    let together = if count == 0 {
        "nothing to look at".to_owned()
    } else {
        format!("{count} to look at; a quote can be made all the same")
    };
    format!("{}{}: {together}\n", told(found, sources), file.display())
}
