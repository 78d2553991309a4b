//! The business folder a command works in when it is given no takeoff.

use std::path::{Path, PathBuf};

use super::files::{self, Files};
use crate::input::business::{self, Business};
use crate::office::record::{Input, InputKind};
use crate::reading::{Problem, Problems, Read};

/// The nearest folder upward from `from` that holds `business.yaml`.
pub fn find(from: &Path, problems: &mut Problems) -> Read<PathBuf> {
    files::business_above(from).ok_or_else(|| {
        let from = from.display();
        let message = format!("no `business.yaml` in `{from}` or in any folder above it");
        problems.push(
            Problem::new("no-business-here", message)
                .help("go to your business folder, or name it: `--in my-quotes`"),
        )
    })
}

/// Reads `business.yaml` of this folder; answers its text as a record keeps it, too.
pub fn business(folder: &Path, files: &mut Files) -> Read<(Business, Input)> {
    let path = folder.join("business.yaml");
    let id = files.text(&files::relative(&path))?;
    let node = files.tree(id)?;
    let before = files.problems.len();
    let business = files.made(&node, business::read)?;
    files.problems.none_since(before)?;
    Ok((business, files.input(InputKind::Business, id)))
}

/// A business that names no book to price by.
pub fn no_price_book() -> Problem {
    Problem::new("no-price-book", "`books` names no price book")
        .help("write `books: [price-books/my-plant.yaml]` in business.yaml, or say `--book`")
}
