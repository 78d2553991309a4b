//! The business folder a command works in when it is given no takeoff.

use std::path::{Path, PathBuf};

use super::files;
use crate::input::business::{self, Business};
use crate::reading::{Problem, Problems, Sources, yaml};

/// The nearest folder upward from `from` that holds `business.yaml`.
pub fn find(from: &Path, problems: &mut Problems) -> Option<PathBuf> {
    let found = files::business_above(from);
    if found.is_none() {
        problems.push(
            Problem::new(
                "no-business-here",
                format!(
                    "no `business.yaml` in `{}` or in any folder above it",
                    from.display()
                ),
            )
            .help("go to your business folder, or name it: `--in my-quotes`"),
        );
    }
    found
}

/// Reads `business.yaml` of this folder.
pub fn business(folder: &Path, sources: &mut Sources, problems: &mut Problems) -> Option<Business> {
    let path = folder.join("business.yaml");
    let node = files::read(&files::relative(&path), sources, problems)
        .and_then(|id| yaml::read(id, sources, problems))?;
    let before = problems.len();
    let business = business::read(&node, problems)?;
    (problems.len() == before).then_some(business)
}
