//! The disk and the clock: the only place that touches them.

pub mod record_folder;

use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use crate::office::record::{Input, InputKind};
use crate::reading::{FileId, Node, Problem, Problems, Read, Reported, Sources, utf8, yaml};
use crate::values::Day;

/// Larger files are no takeoff and no price book.
const LARGEST: u64 = 16 * 1024 * 1024;

/// All that was read so far, and everything that is wrong with it.
#[derive(Debug, Default)]
pub struct Files {
    pub sources: Sources,
    pub problems: Problems,
}

impl Files {
    /// Reports what stands in the way.
    pub fn refuse(&mut self, problem: Problem) -> Reported {
        self.problems.push(problem)
    }

    /// Reads a file as text.
    pub fn text(&mut self, path: &Path) -> Read<FileId> {
        let name = path.display().to_string();
        let unreadable = |error: io::Error| {
            Problem::new("unreadable-file", format!("cannot read `{name}`: {error}"))
                .help("check the permissions of the file and its folder")
        };
        let bytes = match fs::metadata(path) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => Err(Problem::new(
                "no-such-file",
                format!("there is no file `{name}`"),
            )
            .help("check the name and the folder you are in")),
            Err(error) => Err(unreadable(error)),
            Ok(meta) if meta.is_dir() => Err(Problem::new(
                "folder-not-file",
                format!("`{name}` is a folder"),
            )
            .help("name the takeoff file in it, for example `my-job.yaml`")),
            Ok(meta) if LARGEST < meta.len() => Err(Problem::new(
                "file-too-large",
                format!("`{name}` is over 16 MB"),
            )
            .help("a takeoff or price book is a few pages of text; check the name")),
            Ok(_) => fs::read(path).map_err(unreadable),
        };
        let bytes = bytes.map_err(|problem| self.refuse(problem))?;
        utf8::source(&name, bytes, &mut self.sources, &mut self.problems)
    }

    /// The text of a file as a tree.
    pub fn tree(&mut self, id: FileId) -> Read<Node> {
        yaml::read(id, &self.sources, &mut self.problems)
    }

    /// What `read` makes of a tree.
    pub fn made<T>(
        &mut self,
        node: &Node,
        read: impl FnOnce(&Node, &mut Problems) -> Read<T>,
    ) -> Read<T> {
        read(node, &mut self.problems)
    }

    /// What `read` makes of a text that is here.
    pub fn read<T>(
        &mut self,
        id: FileId,
        read: impl FnOnce(&Node, &mut Problems) -> Read<T>,
    ) -> Read<T> {
        let node = self.tree(id)?;
        self.made(&node, read)
    }

    /// The text that a record kept.
    pub fn kept(&mut self, input: &Input) -> FileId {
        self.sources.add(&input.name, input.text.clone())
    }

    /// The texts of these files as a record keeps them.
    pub fn inputs<const N: usize>(&self, what: [InputKind; N], ids: [FileId; N]) -> Vec<Input> {
        let named = what.into_iter().zip(ids);
        named.map(|(what, id)| self.input(what, id)).collect()
    }

    /// The text of a file as a record keeps it.
    pub fn input(&self, what: InputKind, id: FileId) -> Input {
        Input::new(what, self.sources.name(id), self.sources.text(id))
    }
}

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

/// The bytes of a picture.
///
/// # Errors
/// When it cannot be read.
pub fn bytes(path: &Path) -> Result<Vec<u8>, io::Error> {
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
pub fn replace(path: &Path, bytes: &[u8]) -> Result<(), io::Error> {
    if fs::metadata(path).is_ok_and(|there| !there.is_file()) {
        return Err(io::Error::other("it is no plain file"));
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
