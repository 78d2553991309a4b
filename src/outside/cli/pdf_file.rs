//! A PDF on disk, or a problem and nothing written.

use std::path::{Path, PathBuf};

use super::ran::Stop;
use crate::outside::files;
use crate::reading::{Problem, Problems, Read};

/// Where a PDF goes: `output`, else beside the takeoff under its own ending; never on one of the
/// files it is made from.
pub(super) fn destination(
    takeoff: &Path,
    output: Option<&PathBuf>,
    ending: &str,
    problems: &mut Problems,
) -> Read<PathBuf> {
    let beside = || takeoff.with_extension(ending);
    let path = output.cloned().unwrap_or_else(beside);
    let is = |ending: &std::ffi::OsStr| {
        ending.eq_ignore_ascii_case("yaml") || ending.eq_ignore_ascii_case("yml")
    };
    if path.extension().is_some_and(is) || files::same(&path, takeoff) {
        let name = path.display();
        let message = format!("`{name}` is a file you wrote, not a place for the PDF");
        let problem = Problem::new("output-is-input", message);
        return Err(problems.push(problem.help("give `-o` a name that ends in .pdf")));
    }
    Ok(path)
}

/// Writes it there.
pub(super) fn put(path: &Path, bytes: &[u8]) -> Result<(), Stop> {
    files::replace(path, bytes).map_err(|error| {
        Stop::Disk(format!(
            "cannot write `{}`: {error}\n  help: close it where it is open and look at the folder's permissions; an older file is as it was\n",
            path.display()
        ))
    })
}
