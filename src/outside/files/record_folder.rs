//! The folder of records: written once each, one writer at a time, whole or not at all.
//!
//! A record is written beside its place, brought to the disk, and then given its name by a
//! hard link, which refuses a name that is taken. Where a disk knows no links (a stick,
//! some shares), the file is created under its name, which refuses as well; there only the
//! closing seal tells a whole record from a torn one.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write as _};
use std::path::{Path, PathBuf};

/// What a half-written file is called; it never has a name that counts.
const WRITING: &str = ".writing";

/// The folder, held against other writers until it is dropped.
#[derive(Debug)]
pub struct Held {
    folder: PathBuf,
    // The lock goes when the file is closed, also when the program is killed.
    _lock: File,
}

/// Every plain file of the folder by name, in order; none when there is no folder.
///
/// # Errors
/// When the folder cannot be read.
pub fn names(folder: &Path) -> io::Result<Vec<String>> {
    step("list")?;
    let entries = match fs::read_dir(folder) {
        Ok(entries) => entries,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(error),
    };
    let mut names = Vec::new();
    for entry in entries {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        let hidden = name.starts_with('.') || name.ends_with(WRITING);
        if !hidden && entry.file_type()?.is_file() {
            names.push(name);
        }
    }
    names.sort();
    Ok(names)
}

/// The bytes of one file.
///
/// # Errors
/// When it cannot be read.
pub fn read(folder: &Path, name: &str) -> io::Result<Vec<u8>> {
    step("read")?;
    fs::read(folder.join(name))
}

impl Held {
    /// Makes the folder if there is none, and waits until no other program writes there.
    ///
    /// # Errors
    /// When the folder cannot be made or locked.
    pub fn new(folder: &Path) -> io::Result<Self> {
        step("make the folder")?;
        fs::create_dir_all(folder)?;
        let lock = OpenOptions::new()
            .create(true)
            .truncate(false)
            .write(true)
            .open(folder.join(".lock"))?;
        step("lock")?;
        match lock.lock() {
            // A share without locks: the names still refuse to be taken twice.
            Ok(()) => {}
            Err(error) if error.kind() == ErrorKind::Unsupported => {}
            Err(error) => return Err(error),
        }
        let held = Self {
            folder: folder.to_path_buf(),
            _lock: lock,
        };
        held.sweep()?;
        Ok(held)
    }

    /// Half-written files of a program that died; none is being written while the folder is held.
    fn sweep(&self) -> io::Result<()> {
        step("sweep")?;
        for entry in fs::read_dir(&self.folder)? {
            let entry = entry?;
            if entry.file_name().to_string_lossy().ends_with(WRITING) {
                fs::remove_file(entry.path())?;
            }
        }
        Ok(())
    }

    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// Gives the bytes this name, for good.
    ///
    /// # Errors
    /// `AlreadyExists` when the name is taken; anything else when the disk fails. Then nothing
    /// has the name.
    pub fn publish(&self, name: &str, bytes: &[u8]) -> io::Result<()> {
        let place = self.folder.join(name);
        let beside = self.folder.join(format!("{name}{WRITING}"));
        let published = linked(&beside, &place, bytes);
        // Ours, half written or twice named; what counts has its name by now, or never will.
        let _ = fs::remove_file(&beside);
        published?;
        self.kept()
    }

    /// Brings the folder's list of names to the disk, where the system can do that.
    fn kept(&self) -> io::Result<()> {
        step("sync the folder")?;
        if cfg!(unix) {
            File::open(&self.folder)?.sync_all()?;
        }
        Ok(())
    }
}

/// Whole on the disk first, then its name.
fn linked(beside: &Path, place: &Path, bytes: &[u8]) -> io::Result<()> {
    step("create")?;
    let mut file = File::create(beside)?;
    step("write")?;
    file.write_all(bytes)?;
    step("sync")?;
    file.sync_all()?;
    drop(file);
    step("link")?;
    match fs::hard_link(beside, place) {
        Ok(()) => Ok(()),
        Err(error) if error.kind() == ErrorKind::AlreadyExists => Err(error),
        Err(_) => created(place, bytes),
    }
}

/// Without links: the name first, then the bytes.
fn created(place: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = OpenOptions::new()
        .write(true)
        .create_new(true)
        .open(place)?;
    let written = file.write_all(bytes).and_then(|()| file.sync_all());
    if written.is_err() {
        drop(file);
        let _ = fs::remove_file(place);
    }
    written
}

/// Before every touch of the disk; a test build can be told to stop, or to fail, at the n-th.
fn step(what: &str) -> io::Result<()> {
    if cfg!(debug_assertions) {
        faults::step(what)
    } else {
        let _ = what;
        Ok(())
    }
}

/// A disk that fails on demand, for tests of what is left behind.
mod faults {
    use std::io;
    use std::sync::atomic::{AtomicUsize, Ordering};

    static TAKEN: AtomicUsize = AtomicUsize::new(0);

    pub(super) fn step(what: &str) -> io::Result<()> {
        let asked = |name: &str| -> Option<usize> { std::env::var(name).ok()?.parse().ok() };
        let now = TAKEN.fetch_add(1, Ordering::SeqCst) + 1;
        if asked("FLATWORK_KILLED_AT") == Some(now) {
            std::process::abort();
        }
        if asked("FLATWORK_DISK_FAILS_AT") == Some(now) {
            return Err(io::Error::other(format!("the disk failed to {what}")));
        }
        Ok(())
    }
}
