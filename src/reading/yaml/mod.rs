//! YAML text becomes a tree of nodes with places.
//!
//! The events come from the parser beneath `serde_yaml`, since its serde face has already
//! turned `12.50` into a float, and knows no place for an unknown key.

mod builder;
mod colons;
mod columns;
mod copies;
mod line;
mod mend;
mod open;
mod quotes;
mod scene;
mod swallowed;
mod syntax;

pub use super::tree::{Node, Value};

use super::place::{FileId, Place, Sources};
use super::problem::{Problem, Problems, Read, Reported};
use builder::Builder;
pub(super) use line::with_space_after_colon;
use mend::Mended;
use serde_yaml::granit_parser::{Options, Parser, options};

/// The largest file read, in bytes: a book of 2,000 items is a tenth of it.
const LARGEST_FILE: usize = 4_000_000;
/// Lists and groups inside each other; the deepest honest file has about eight.
const DEEPEST: usize = 32;
/// How often one file is mended and read again before the rest is left unread.
const MOST_ATTEMPTS: usize = 40;

/// Reads one file. The top of the tree is always a map.
pub fn read(file: FileId, sources: &Sources, problems: &mut Problems) -> Read<Node> {
    let text = sources.text(file);
    if LARGEST_FILE < text.len() {
        let message = format!("the file is larger than {LARGEST_FILE} bytes");
        return Err(problems.push(Problem::new("file-too-large", message).at(start(file))));
    }
    let mut mended = Mended::new(text);
    let mut attempts = 0;
    loop {
        let mut others = Problems::new();
        let stumble = match parse(file, sources, &mended, &mut others) {
            Ok(root) => {
                let silent = !others.is_empty() || 0 < attempts;
                problems.extend(others);
                return usable(root, file, silent, problems);
            }
            Err(stumble) => stumble,
        };
        attempts += 1;
        if !mend(&mut mended, stumble, problems) || attempts == MOST_ATTEMPTS {
            // The first place where it stumbled was reported.
            return Err(Reported::before());
        }
    }
}

/// Reports where the parser stumbled, and blanks the spot; `false` if that is no use.
fn mend(mended: &mut Mended, stumble: Problem, problems: &mut Problems) -> bool {
    if stumble.code == "tab-indent" {
        problems.push(stumble);
        mended.replace_tabs();
        return true;
    }
    let byte = stumble.place.map_or(0, |place| place.start as usize);
    if mended.spots.last().is_some_and(|spot| byte < spot.end) {
        // The last spot was blanked too tightly; this is not another problem.
        return mended.widen();
    }
    mended.blank(byte);
    if stumble.code != "indentation" || !mended.tabs {
        problems.push(stumble);
    }
    true
}

/// The tree of a text that may be mended in some spots, or where the parser stumbles.
fn parse(
    file: FileId,
    sources: &Sources,
    mended: &Mended,
    problems: &mut Problems,
) -> Result<Option<Node>, Problem> {
    let mut builder = Builder::new(file, mended, problems);
    for event in Parser::new_from_str_with_options(&mended.text, limits()) {
        let stop = match event {
            Ok((event, span)) => builder.take(event, &span).is_err(),
            Err(error) => {
                let scene = builder.scene(&error, sources);
                return Err(syntax::problem(&error, &scene));
            }
        };
        if stop {
            break;
        }
    }
    Ok(builder.finish())
}

/// The tree if it is a map, since every file is one; `silent` where more is known already.
fn usable(root: Option<Node>, file: FileId, silent: bool, problems: &mut Problems) -> Read<Node> {
    let problem = match root {
        Some(root) if root.reported => return Err(Reported::before()),
        Some(root) if matches!(root.value, Value::Map(_)) => return Ok(root),
        Some(root) if !root.is_nothing() => not_a_map(&root),
        _ => nothing_in_it(file),
    };
    Err(if silent {
        Reported::before()
    } else {
        problems.push(problem)
    })
}

fn limits() -> Options {
    options! {
        emit_unresolved_aliases: true,
        max_buffered_comment_events: LARGEST_FILE,
        flow_nesting_limit: DEEPEST,
        block_nesting_limit: DEEPEST,
    }
}

fn start(file: FileId) -> Place {
    Place {
        file,
        start: 0,
        end: 0,
    }
}

fn nothing_in_it(file: FileId) -> Problem {
    Problem::new("empty-file", "the file has nothing in it")
        .at(start(file))
        .help("write keys, such as `customer: Dana Example`")
}

fn not_a_map(root: &Node) -> Problem {
    let message = format!(
        "the file is a group of keys, but this is {}",
        root.value.described()
    );
    let help = root.space_after_colon().unwrap_or_else(|| {
        "write a key, a colon and a space before it, such as `customer: Dana Example`".to_owned()
    });
    Problem::new("not-keys", message).at(root.place).help(help)
}

fn too_deep(place: Place) -> Problem {
    let message = format!("more than {DEEPEST} lists and groups inside each other");
    Problem::new("nested-too-deep", message)
        .at(place)
        .help("take out the brackets or dashes that are too many")
}

#[cfg(test)]
mod fuzz;
#[cfg(test)]
mod tests;
