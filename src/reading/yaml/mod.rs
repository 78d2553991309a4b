//! YAML text becomes a tree of nodes with places.
//!
//! The events come from the parser beneath `serde_yaml`, since its serde face has already
//! turned `12.50` into a float, and knows no place for an unknown key.

mod builder;
mod copies;
mod syntax;

pub use super::tree::{Entry, Node, Value};

use super::place::{FileId, Place, Sources};
use super::problem::{Problem, Problems};
use builder::Builder;
use serde_yaml::granit_parser::{Options, Parser, options};

/// The largest file read, in bytes: a book of 2,000 items is a tenth of it.
const LARGEST_FILE: usize = 4_000_000;
/// Lists and groups inside each other; the deepest honest file has about eight.
const DEEPEST: usize = 32;

/// Reads one file; `None` when nothing in it can be used.
///
/// The top of the tree is always a map.
pub fn read(file: FileId, sources: &Sources, problems: &mut Problems) -> Option<Node> {
    let text = sources.text(file);
    if LARGEST_FILE < text.len() {
        let message = format!("the file is larger than {LARGEST_FILE} bytes");
        problems.push(Problem::new("file-too-large", message).at(start(file)));
        return None;
    }
    let mut builder = Builder::new(file, text, problems);
    for event in Parser::new_from_str_with_options(text, limits()) {
        let taken = match event {
            Ok((event, span)) => builder.take(event, &span),
            Err(error) => {
                let problem = syntax::problem(&error, builder.last, text);
                problems.push(problem);
                return None;
            }
        };
        if taken.is_err() {
            break;
        }
    }
    usable(builder.finish(), file, problems)
}

/// The tree if it is a map, since every file is one.
fn usable(root: Option<Node>, file: FileId, problems: &mut Problems) -> Option<Node> {
    match root {
        Some(root) if root.reported || matches!(root.value, Value::Map(_)) => Some(root),
        Some(root) if !root.is_nothing() => {
            problems.push(not_a_map(&root));
            None
        }
        _ => {
            problems.push(nothing_in_it(file));
            None
        }
    }
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
    Problem::new("not-keys", message)
        .at(root.place)
        .help("write a key, a colon and a space before it, such as `customer: Dana Example`")
}

fn too_deep(place: Place) -> Problem {
    let message = format!("more than {DEEPEST} lists and groups inside each other");
    Problem::new("nested-too-deep", message).at(place)
}
