//! What a rule under `also` can go by is what jobs really have.

use std::fs;
use std::path::Path;

use flatwork::inside::input::book::{Among, all_known};

use crate::golden::folders;

/// Lines of every recorded takeoff.
fn recorded() -> Vec<String> {
    let mut lines = Vec::new();
    let golden = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/takeoff");
    for folder in folders(&golden) {
        let text = fs::read_to_string(folder.join("expected/stdout")).unwrap_or_default();
        lines.extend(text.lines().map(str::to_owned));
    }
    lines
}

#[test]
fn every_quantity_of_a_slab_is_one_that_some_recorded_job_lists_in_its_unit() {
    let lines = recorded();
    assert!(lines.len() > 1000);
    for known in all_known().filter(|known| known.among == Among::Slabs) {
        let is_it = |line: &&String| {
            let words: Vec<&str> = line.split_whitespace().collect();
            let title: Vec<&str> = known.name.split(' ').collect();
            let unit: Vec<&str> = known.unit.plural().split(' ').collect();
            let end = words.len().checked_sub(unit.len() + 1);
            end.is_some_and(|end| {
                words[..end].ends_with(&title) && title.len() < end && words[end + 1..] == unit[..]
            })
        };
        let name = known.name;
        assert!(
            lines.iter().any(|line| is_it(&line)),
            "no job lists `{name}` in {}",
            known.unit
        );
    }
}
