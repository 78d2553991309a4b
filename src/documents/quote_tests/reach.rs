//! Where the words of a page stand, and that nothing stands on anything else.

use crate::press::drawing::PagePoint;
use crate::press::page::{Document, Ink, Mark, Owner, Page};
use crate::press::text::width;

/// A text's place: left, top, right, bottom from ascender to descender.
type Reach = [f32; 4];

fn texts(page: &Page) -> Vec<(Reach, String, Owner)> {
    page.marks
        .iter()
        .filter_map(|mark| match &mark.ink {
            Ink::Glyphs(run) => {
                let last = run
                    .glyphs
                    .iter()
                    .rposition(|glyph| !glyph.text.trim().is_empty())?;
                let words: String = run.glyphs.iter().map(|glyph| glyph.text.as_str()).collect();
                let length = width(&run.glyphs[..=last], run.size);
                let PagePoint { x, y } = run.at;
                // Capital height and a descender of Plex, in parts of the size.
                let reach = [x, y - 0.7 * run.size, x + length, y + 0.2 * run.size];
                Some((reach, words, mark.owner))
            }
            Ink::Path(_) | Ink::Picture(_) => None,
        })
        .collect()
}

/// Straight rules of the layout itself, as boxes without height or width.
fn rules(page: &Page) -> Vec<Reach> {
    let points = |mark: &Mark| match &mark.ink {
        Ink::Path(path) if mark.owner == Owner::Layout => {
            match path.points().collect::<Vec<_>>()[..] {
                [from, to] => Some([from.x, from.y, to.x, to.y]),
                _ => None,
            }
        }
        _ => None,
    };
    page.marks.iter().filter_map(points).collect()
}

fn meet(a: Reach, b: Reach) -> bool {
    const HAIR: f32 = 0.3;
    a[0] + HAIR < b[2] && b[0] + HAIR < a[2] && a[1] + HAIR < b[3] && b[1] + HAIR < a[3]
}

/// Fails when words leave the margins, meet other words or a rule, or a page is empty.
#[track_caller]
pub(in crate::documents) fn check_pages(name: &str, document: &Document) {
    for (number, page) in document.pages.iter().enumerate() {
        let texts = texts(page);
        for (at, (reach, words, owner)) in texts.iter().enumerate() {
            let place = format!("{name}, page {}: `{words}` at {reach:?}", number + 1);
            assert!(
                47.9 <= reach[0] && reach[2] <= 564.1,
                "left or right: {place}"
            );
            let bottom = if *owner == Owner::Footer {
                756.0
            } else {
                732.1
            };
            // The words on a band stand higher than any others.
            let top = if *owner == Owner::Header { 36.0 } else { 44.0 };
            assert!(
                top <= reach[1] && reach[3] <= bottom,
                "above or below: {place}"
            );
            for (other, other_words, _) in &texts[at + 1..] {
                assert!(
                    !meet(*reach, *other),
                    "over `{other_words}` {other:?}: {place}"
                );
            }
            for rule in rules(page) {
                let [left, top, right, bottom] = rule;
                let thick = [left, top - 0.4, right, bottom + 0.4];
                assert!(!meet(*reach, thick), "on the rule {rule:?}: {place}");
            }
        }
        assert!(
            texts
                .iter()
                .any(|(_, _, owner)| matches!(owner, Owner::Node(_))),
            "{name}: page {} is empty",
            number + 1
        );
    }
}

pub(in crate::documents) fn all_words(document: &Document) -> String {
    let mut all = String::new();
    for page in &document.pages {
        for (_, words, owner) in texts(page) {
            if matches!(owner, Owner::Node(_)) {
                all.push_str(words.trim());
                all.push(' ');
            }
        }
    }
    all
}
