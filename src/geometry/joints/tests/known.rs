//! The gallery as it is laid out: each was looked at as a picture before it was written down here.
//!
//! Published: 36 x 20 ft at 10 ft gives panels of 9 x 10 ft; a 10 ft drive has 10 ft panels, a 3 ft
//! walk squares of 3 ft (Beall, p. 30, as restated).

use std::fmt::Write as _;

use super::super::Layout;
use super::gallery::gallery;
use crate::values::rounding;

fn told(layout: &Layout) -> String {
    let feet = |number| rounding::with_places(number, 1);
    let largest = layout.panels[0].size;
    let mut text = format!(
        "{} ft, {} panels, the largest {} x {}",
        feet(layout.length),
        layout.panels.len(),
        feet(largest.0.feet()),
        feet(largest.1.feet()),
    );
    let mut breaks: Vec<String> = Vec::new();
    for one in &layout.breaks {
        let what = format!("{:?}", one.what);
        let word = what
            .split([' ', '('])
            .next()
            .unwrap_or_default()
            .to_lowercase();
        breaks.push(word);
    }
    if !breaks.is_empty() {
        write!(text, ": {}", breaks.join(", ")).unwrap();
    }
    text
}

#[test]
fn the_gallery_is_laid_out_as_it_was_looked_at() {
    let mut text = String::new();
    for slab in gallery() {
        writeln!(
            text,
            "{}, {}: {}",
            slab.name,
            slab.longest,
            told(&slab.laid_out())
        )
        .unwrap();
    }
    assert_eq!(text, include_str!("gallery.txt"), "{text}");
}
