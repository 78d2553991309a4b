//! From a document to a PDF on disk, or a problem and nothing written.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use super::COULD_NOT_RUN;
use crate::documents::DocumentError;
use crate::outside::files;
use crate::press::page::Document;
use crate::press::pdf;
use crate::reading::{Problem, Problems};

/// Writes the PDF to `output`, else beside the takeoff under its own ending.
///
/// `Ok` is where it lies; `Err` the exit status where the disk refused it; none where
/// there is a problem to show.
pub(super) fn print(
    document: Result<Document, DocumentError>,
    takeoff: &Path,
    output: Option<&PathBuf>,
    ending: &str,
    problems: &mut Problems,
) -> Option<Result<PathBuf, ExitCode>> {
    let document = match document {
        Ok(document) => document,
        Err(error) => {
            problems.push(
                Problem::new("cannot-set-page", error.to_string())
                    .help("write it with letters of the bundled face, or shorter"),
            );
            return None;
        }
    };
    let path = destination(takeoff, output, ending, problems)?;
    Some(put(&path, &pdf::write(&document)).map(|()| path))
}

/// Where a PDF goes: `output`, else beside the takeoff under its own ending.
pub(super) fn destination(
    takeoff: &Path,
    output: Option<&PathBuf>,
    ending: &str,
    problems: &mut Problems,
) -> Option<PathBuf> {
    let beside = || takeoff.with_extension(ending);
    let path = output.cloned().unwrap_or_else(beside);
    refuse_inputs(&path, takeoff, problems)?;
    Some(path)
}

/// Writes it there; `Err` is the exit status where the disk refused it.
pub(super) fn put(path: &Path, bytes: &[u8]) -> Result<(), ExitCode> {
    files::replace(path, bytes).map_err(|error| {
        eprintln!("cannot write `{}`: {error}", path.display());
        eprintln!(
            "  help: close it where it is open and look at the folder's permissions; an older file is as it was"
        );
        ExitCode::from(COULD_NOT_RUN)
    })
}

/// The PDF never lands on one of the files it is made from.
fn refuse_inputs(path: &Path, takeoff: &Path, problems: &mut Problems) -> Option<()> {
    let yaml = path.extension().is_some_and(|ending| {
        ending.eq_ignore_ascii_case("yaml") || ending.eq_ignore_ascii_case("yml")
    });
    if yaml || files::same(path, takeoff) {
        problems.push(
            Problem::new(
                "output-is-input",
                format!(
                    "`{}` is a file you wrote, not a place for the PDF",
                    path.display()
                ),
            )
            .help("give `-o` a name that ends in .pdf"),
        );
        return None;
    }
    Some(())
}
