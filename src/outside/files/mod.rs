//! The disk and the clock: the only place that touches them.

pub mod record_folder;

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use crate::reading::{FileId, Problem, Problems, Sources, utf8};
use crate::values::Day;

/// Larger files are no takeoff and no price book.
const LARGEST: u64 = 16 * 1024 * 1024;

/// The business folder's file: the nearest `business.yaml` upward from the takeoff.
pub fn business_file(takeoff: &Path) -> Option<PathBuf> {
    let start = fs::canonicalize(takeoff).ok()?;
    let shown = start
        .parent()?
        .ancestors()
        .map(|folder| folder.join("business.yaml"))
        .find(|file| file.is_file())?;
    Some(relative(&shown))
}

/// The nearest folder upward from `from`, itself included, that holds `business.yaml`.
pub fn business_above(from: &Path) -> Option<PathBuf> {
    let start = fs::canonicalize(from).ok()?;
    let found = start
        .ancestors()
        .find(|folder| folder.join("business.yaml").is_file())?;
    Some(relative(found))
}

/// A path as people would type it from here, where that is shorter.
pub fn relative(path: &Path) -> PathBuf {
    let here = std::env::current_dir()
        .ok()
        .and_then(|here| fs::canonicalize(here).ok());
    match here.and_then(|here| path.strip_prefix(&here).ok().map(Path::to_path_buf)) {
        Some(short) if !short.as_os_str().is_empty() => short,
        _ => path.to_path_buf(),
    }
}

/// Reads a file as text; what stands in the way is reported.
pub fn read(path: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<FileId> {
    let name = path.display().to_string();
    let refuse = |code, message: String, help: &str| Some(Problem::new(code, message).help(help));
    let problem = match fs::metadata(path) {
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => refuse(
            "no-such-file",
            format!("there is no file `{name}`"),
            "check the name and the folder you are in",
        ),
        Err(error) => refuse(
            "unreadable-file",
            format!("cannot read `{name}`: {error}"),
            "check the permissions of the file and its folder",
        ),
        Ok(meta) if meta.is_dir() => refuse(
            "folder-not-file",
            format!("`{name}` is a folder"),
            "name the takeoff file in it, for example `my-job.yaml`",
        ),
        Ok(meta) if LARGEST < meta.len() => refuse(
            "file-too-large",
            format!("`{name}` is over 16 MB"),
            "a takeoff or price book is a few pages of text; check the name",
        ),
        Ok(_) => None,
    };
    if let Some(problem) = problem {
        problems.push(problem);
        return None;
    }
    match fs::read(path) {
        Ok(bytes) => utf8::source(&name, bytes, sources, problems),
        Err(error) => {
            problems.push(
                Problem::new("unreadable-file", format!("cannot read `{name}`: {error}"))
                    .help("check the permissions of the file and its folder"),
            );
            None
        }
    }
}

/// The bytes of a picture.
///
/// # Errors
/// When it cannot be read.
pub fn bytes(path: &Path) -> Result<Vec<u8>, std::io::Error> {
    fs::read(path)
}

/// The path from the root, links followed.
pub fn whole(path: &Path) -> Option<PathBuf> {
    fs::canonicalize(path).ok()
}

pub fn exists(path: &Path) -> bool {
    path.is_file()
}

/// Whether both paths are one file on disk.
pub fn same(one: &Path, other: &Path) -> bool {
    matches!((fs::canonicalize(one), fs::canonicalize(other)), (Ok(one), Ok(other)) if one == other)
}

/// Whether `path`, once links are followed, lies inside `folder`.
pub fn inside(folder: &Path, path: &Path) -> bool {
    // The folder we are in has an empty name.
    let folder = if folder.as_os_str().is_empty() {
        Path::new(".")
    } else {
        folder
    };
    matches!((fs::canonicalize(folder), fs::canonicalize(path)), (Ok(folder), Ok(path)) if path.starts_with(&folder))
}

/// The local day on the clock.
pub fn today() -> Day {
    Day::new(chrono::Local::now().date_naive())
}

/// Writes a whole file or nothing: beside it first, then in its place; an older one stays until then.
/// A device, a pipe or a folder is never replaced by a file.
///
/// # Errors
/// When the folder cannot be written, the old file is held by another program, or what is there is
/// no plain file.
pub fn replace(path: &Path, bytes: &[u8]) -> Result<(), std::io::Error> {
    if fs::metadata(path).is_ok_and(|there| !there.is_file()) {
        return Err(std::io::Error::other("it is no plain file"));
    }
    let mut name = path.file_name().unwrap_or_default().to_os_string();
    // Its own name for each program, since two may write the same quote at once.
    name.push(format!(".{}.writing", std::process::id()));
    let beside = path.with_file_name(name);
    let written = fs::File::create(&beside)
        .and_then(|mut file| file.write_all(bytes).and_then(|()| file.sync_all()))
        .and_then(|()| fs::rename(&beside, path));
    if written.is_err() {
        // The half-written copy is ours; the older document was never touched.
        let _ = fs::remove_file(&beside);
    }
    written
}

#[cfg(all(test, unix))]
mod tests {
    use std::os::unix::fs::FileTypeExt as _;
    use std::os::unix::net::UnixListener;

    use super::*;

    #[test]
    fn only_plain_files_are_replaced() {
        let path = std::env::temp_dir().join(format!("flatwork-socket-{}", std::process::id()));
        let socket = UnixListener::bind(&path).expect("a socket");
        assert!(replace(&path, b"a quote").is_err());
        let kind = fs::metadata(&path).expect("it is there").file_type();
        assert!(kind.is_socket(), "a socket stays a socket");
        drop(socket);
        fs::remove_file(&path).expect("ours");
    }
}
