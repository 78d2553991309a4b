//! The quote's pages: complete, inside the margins, nothing on top of anything else.

mod reach;
mod stress;

use self::reach::{all_words, check_pages};
use self::stress::stress_views;
use super::quote_document;
use super::views::quote::QuoteView;
use crate::press::drawing::{Drawing, Path, Point, Rgb, Shape, Size, Step, Stroke};
use crate::press::page::{Document, Role};
use std::collections::BTreeMap;

/// Frames in place of real figures.
fn figures() -> BTreeMap<String, Drawing> {
    let frame = |height: f32, alternative: &str| {
        let corner = |x, y| Point { x, y };
        Drawing {
            size: Size {
                width: 516.0,
                height,
            },
            shapes: vec![Shape::Path(Path {
                steps: vec![
                    Step::Move(corner(0.5, 0.5)),
                    Step::Line(corner(515.5, 0.5)),
                    Step::Line(corner(515.5, height - 0.5)),
                    Step::Line(corner(0.5, height - 0.5)),
                    Step::Close,
                ],
                stroke: Some(Stroke {
                    color: Rgb(0xa9, 0xa3, 0x9a),
                    width: 0.4,
                    dash: Vec::new(),
                }),
                fill: None,
            })],
            alternative: alternative.to_owned(),
        }
    };
    BTreeMap::from([
        ("plan".to_owned(), frame(252.0, "Plan of the patio")),
        ("cure".to_owned(), frame(288.0, "Strength by day")),
    ])
}

fn pages(view: &QuoteView) -> Document {
    quote_document(view, &figures()).unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn the_sample_is_three_pages() {
    let document = pages(&QuoteView::sample());
    assert_eq!(document.pages.len(), 3);
    check_pages("sample", &document);
    let words = all_words(&document);
    for expected in [
        "below 8 in (page 2 )",
        "$12,200.60",
        "Price good until June 3, 2026",
    ] {
        let plain = words.replace("page\u{a0}", "page ");
        assert!(
            plain
                .replace(" )", ")")
                .contains(&expected.replace(" )", ")")),
            "{expected} in {plain}"
        );
    }
}

#[test]
fn nothing_overlaps_or_leaves_the_page_however_long_the_quote() {
    for (name, view) in stress_views() {
        check_pages(&name, &pages(&view));
    }
}

#[test]
fn nothing_is_lost_however_long_the_quote() {
    for (name, view) in stress_views() {
        let words = all_words(&pages(&view));
        for expected in view.not_included.iter().chain(&view.assumptions) {
            let last = expected.split(' ').next_back().expect("a text has words");
            let last = last.trim_end_matches(|character| "{}:)".contains(character));
            if !last.contains("page:") {
                assert!(words.contains(last), "{name}: {expected}");
            }
        }
        for group in view.choices.iter().flat_map(|choices| &choices.groups) {
            assert!(
                words.contains(&group.how_many),
                "{name}: {}",
                group.question
            );
        }
        for term in &view.scope {
            assert!(words.contains(&term.word), "{name}: {}", term.word);
            let last = term.text.split(' ').next_back().expect("a text has words");
            assert!(words.contains(last), "{name}: {}", term.text);
        }
    }
}

#[test]
fn one_heading_of_level_one_no_level_skipped_every_figure_bounded() {
    let mut views = stress_views();
    views.push(("sample".into(), QuoteView::sample()));
    for (name, view) in views {
        let document = pages(&view);
        let mut level = 0;
        for node in &document.structure {
            if let Role::Heading(next) = node.role {
                assert!(next <= level + 1, "{name}: from level {level} to {next}");
                level = next;
            }
            if node.role == Role::Figure {
                let (_, [left, top, right, bottom]) = node.bounds.expect("a figure is placed");
                assert!(left < right && top < bottom, "{name}");
            }
        }
    }
}

#[test]
fn the_same_view_gives_the_same_bytes() {
    let once = crate::press::pdf::write(&pages(&QuoteView::sample()));
    let again = crate::press::pdf::write(&pages(&QuoteView::sample()));
    assert_eq!(once, again);
}

#[test]
fn a_character_without_a_sign_is_named() {
    let mut view = QuoteView::sample();
    view.customer = "Dana 漢 Example".into();
    let error = quote_document(&view, &figures()).expect_err("the faces lack this character");
    assert!(error.to_string().contains('漢'), "{error}");
    assert!(error.to_string().contains("Dana"), "{error}");
}

#[test]
fn markup_in_a_string_stays_text() {
    let mut view = QuoteView::sample();
    view.customer = "Dana </p><newpage/> & \"Sons\" <b>".into();
    let document = pages(&view);
    assert_eq!(document.pages.len(), 3);
    assert!(all_words(&document).contains("Dana </p><newpage/> & \"Sons\" <b>"));
}
