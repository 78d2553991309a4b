//! Nothing that can be typed makes the reader panic, loop or lose a place.

use super::*;
use crate::reading::caret;

const SAMPLE: &str = r#"# a job
customer: {name: Dana Example, address: "12 Quarry Rd, Quillhaven", phone: 555-0142}
pour: 2026-05-12   # next week
slabs:
  patio:
    outline:
      - east 24 ft, against house
      - south 12'-6"
    bars: no. 4 at 18 in
    note: 'it''s wet'
  walk: &walk
    size: 22 ft x 4 ft
  path: *walk
extra:
  - sod repair: 120 sq ft
  - {cost: 85.00}
notes: |
  dog; sprinkler head
  – by the gate
"#;

/// Reads a text and shows everything said about it.
fn exercise(text: &str) {
    let (mut sources, mut problems) = (Sources::default(), Problems::new());
    let file = sources.add("job.yaml", text.to_owned());
    let root = read(file, &sources, &mut problems);
    let length = sources.text(file).len();
    for problem in &problems {
        let place = problem.place.expect("a problem of a file has a place");
        assert!(
            place.start <= place.end && place.end as usize <= length,
            "{problem:?}\n{text}"
        );
    }
    caret::show_all(&problems, "error", &sources);
    assert!(
        root.is_ok() || !problems.is_empty(),
        "nothing said about:\n{text}"
    );
}

/// A small generator of numbers that only look random, so that a failure can be repeated.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 33).expect("31 bits") % end
    }
}

#[test]
fn every_beginning_of_a_file_is_read_without_panic() {
    exercise(SAMPLE);
    for (end, _) in SAMPLE.char_indices() {
        exercise(&SAMPLE[..end]);
        exercise(&SAMPLE[end..]);
    }
}

#[test]
fn files_with_random_slips_are_read_without_panic() {
    let slips: Vec<char> = " \t\n\r:-#'\"[]{},&*!|>%@`~?\\x0日\u{feff}\u{85}\u{2028}\u{0}"
        .chars()
        .collect();
    let mut numbers = Numbers(0x9E37_79B9_7F4A_7C15);
    for _ in 0..4_000 {
        let mut text: Vec<char> = SAMPLE.chars().collect();
        for _ in 0..=numbers.below(4) {
            let at = numbers.below(text.len());
            let slip = slips[numbers.below(slips.len())];
            match numbers.below(4) {
                0 => text.insert(at, slip),
                1 => text[at] = slip,
                2 => drop(text.remove(at)),
                _ => {
                    let to = (at + numbers.below(12)).min(text.len());
                    let moved: Vec<char> = text.drain(at..to).collect();
                    let to = numbers.below(text.len() + 1);
                    text.splice(to..to, moved);
                }
            }
        }
        exercise(&text.into_iter().collect::<String>());
    }
}
