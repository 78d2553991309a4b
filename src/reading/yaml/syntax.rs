//! What the parser cannot read, in a contractor's words.

use crate::reading::place::Place;
use crate::reading::problem::Problem;
use serde_yaml::granit_parser::ScanError;

/// The problem behind a parser error; `last` is where the last readable value stands.
pub(super) fn problem(error: &ScanError, last: Place, text: &str) -> Problem {
    let byte = error.marker().byte_offset().unwrap_or(0).min(text.len());
    let start = u32::try_from(byte).expect("the file is smaller than the largest one read");
    let place = Place {
        start,
        end: start,
        ..last
    };
    Problem::new("not-yaml", error.info()).at(place)
}
