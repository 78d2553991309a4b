//! The business folder a command works in when it is given no takeoff.

use std::path::{Path, PathBuf};

use super::files;
use crate::input::business::{self, Business};
use crate::office::chain::hash;
use crate::office::record::Input;
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

/// Reads `business.yaml` of this folder; answers its text as a record keeps it, too.
pub fn business(
    folder: &Path,
    sources: &mut Sources,
    problems: &mut Problems,
) -> Option<(Business, Input)> {
    let path = folder.join("business.yaml");
    let id = files::read(&files::relative(&path), sources, problems)?;
    let node = yaml::read(id, sources, problems)?;
    let before = problems.len();
    let business = business::read(&node, problems)?;
    let text = sources.text(id).to_owned();
    let input = Input {
        what: "business".to_owned(),
        name: sources.name(id).to_owned(),
        sha256: hash(text.as_bytes()),
        text,
    };
    (problems.len() == before).then_some((business, input))
}

/// Reads the business that a record kept.
pub fn kept(input: &Input, problems: &mut Problems) -> Option<Business> {
    let mut sources = Sources::default();
    let id = sources.add(&input.name, input.text.clone());
    let node = yaml::read(id, &sources, problems)?;
    business::read(&node, problems)
}
