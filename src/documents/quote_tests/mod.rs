//! The quote's pages: complete, inside the margins, nothing on top of anything else.

pub(super) mod reach;
mod stress;

use self::reach::{all_words, check_pages};
use self::stress::stress_views;
use super::demo::{Demo, PATIO};
use super::document;
use super::offering::{self, Offering};
use super::views::quote::{QuoteView, Term};
use crate::office::record::Replaces;
use crate::office::text::{Cents, Day};
use crate::press::drawing::{Drawing, Rgb};
use crate::press::layout::style::Look;
use crate::press::page::{Document, Ink, StructureRole};
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::LazyLock;

fn demo() -> Demo {
    Demo::new(PATIO)
}

/// The demo's quote with one of everything, as issued in the place of an earlier one.
fn sample() -> QuoteView {
    static SAMPLE: LazyLock<QuoteView> = LazyLock::new(|| {
        let demo = demo();
        let before = Replaces {
            day: Day("2026-04-20".parse().expect("a day")),
            total: Cents(demo.offer.quoted().totals().cost),
        };
        offering::view(Offering {
            number: Some("26-031"),
            replaces: Some(before),
            ..demo.offering()
        })
    });
    SAMPLE.clone()
}

/// As large as the demo's, and empty: words on a drawing may stand upright.
fn figures() -> &'static BTreeMap<String, Drawing> {
    static FIGURES: LazyLock<BTreeMap<String, Drawing>> = LazyLock::new(|| {
        let mut figures = offering::figures(demo().offering(), Rgb(0, 0, 0));
        for figure in figures.values_mut() {
            figure.shapes.clear();
        }
        figures
    });
    &FIGURES
}

fn pages(view: &QuoteView) -> Document {
    document(view, figures()).unwrap_or_else(|error| panic!("{error}"))
}

#[test]
fn the_sample_is_three_pages() {
    let view = sample();
    let document = pages(&view);
    assert_eq!(document.pages.len(), 3);
    check_pages("sample", &document);
    let words = all_words(&document).replace('\u{a0}', " ");
    for expected in [
        "What you may choose on page 2",
        &view.total.amount,
        "Price good until June 3, 2026",
    ] {
        assert!(words.contains(expected), "{expected} in {words}");
    }
}

#[test]
fn each_release_has_a_line_for_initials_before_the_signature() {
    let mut view = sample();
    let count = |view: &QuoteView| all_words(&pages(view)).matches("Initials").count();
    assert_eq!(count(&view), 0);
    view.releases = ["Driveway", "Septic tank"]
        .map(|word| Term::new(word, "Our truck stands on it."))
        .to_vec();
    assert_eq!(count(&view), 2);
    let words = all_words(&pages(&view));
    let at = |text: &str| words.find(text).expect(text);
    assert!(at("Please initial") < at("Septic tank.") && at("Septic tank.") < at("Signature"));
}

#[test]
fn nothing_overlaps_or_leaves_the_page_however_long_the_quote() {
    for (name, view) in stress_views() {
        check_pages(&name, &pages(&view));
    }
}

/// Every string of a view that the body of the pages must show.
fn strings(value: &Value, all: &mut Vec<String>) {
    match value {
        Value::String(text) => all.push(text.clone()),
        Value::Array(values) => values.iter().for_each(|value| strings(value, all)),
        Value::Object(fields) => fields
            .iter()
            .filter(|(name, _)| !["file", "running_head"].contains(&name.as_str()))
            .for_each(|(_, value)| strings(value, all)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// Without white space, since lines end where they may.
fn compact(text: &str) -> String {
    text.split_whitespace().collect()
}

#[test]
fn every_string_of_the_view_is_read_in_one_go() {
    let mut views = stress_views();
    views.push(("sample".into(), sample()));
    for (name, view) in views {
        let words = compact(&all_words(&pages(&view)));
        let mut all = Vec::new();
        strings(
            &serde_json::to_value(&view).expect("a view is plain data"),
            &mut all,
        );
        assert!(40 < all.len(), "{name}");
        for text in &all {
            // Page numbers are not in the view: look for what stands around them.
            for part in text
                .split("{page:")
                .map(|part| part.split_once('}').unwrap_or(("", part)).1)
            {
                assert!(
                    words.contains(&compact(part)),
                    "{name}: `{part}` is missing"
                );
            }
        }
    }
}

#[test]
fn a_long_amount_steps_down_and_stays_on_one_line() {
    let document = pages(&stress_views().remove(3).1);
    let amount = document.pages[0]
        .marks
        .iter()
        .find_map(|mark| match &mark.ink {
            Ink::Glyphs(run) if run.color == Look::default().accent => Some(run),
            _ => None,
        });
    let run = amount.expect("the amount is the only text in the accent color");
    let words: String = run.glyphs.iter().map(|glyph| glyph.text.as_str()).collect();
    assert_eq!((words.as_str(), run.size), ("$1,012,200.60", 32.0));
}

#[test]
fn a_figure_that_nobody_drew_is_named() {
    let error = document(&sample(), &BTreeMap::new()).expect_err("there are no figures at all");
    assert_eq!(error.to_string(), "no figure is named `plan`");
}

#[test]
fn one_heading_of_level_one_no_level_skipped_every_figure_bounded() {
    let mut views = stress_views();
    views.push(("sample".into(), sample()));
    for (name, view) in views {
        let document = pages(&view);
        let mut level = 0;
        for node in &document.structure {
            if let StructureRole::Heading(next) = node.role {
                assert!(next <= level + 1, "{name}: from level {level} to {next}");
                level = next;
            }
            if node.role == StructureRole::Figure {
                let (_, [left, top, right, bottom]) = node.bounds.expect("a figure is placed");
                assert!(left < right && top < bottom, "{name}");
            }
        }
    }
}

#[test]
fn the_same_view_gives_the_same_bytes() {
    let once = crate::press::pdf::write(&pages(&sample()));
    let again = crate::press::pdf::write(&pages(&sample()));
    assert_eq!(once, again);
}

#[test]
fn a_character_without_a_sign_is_named() {
    let mut view = sample();
    view.customer = "Dana 漢 Example".into();
    let error = document(&view, figures()).expect_err("the faces lack this character");
    assert!(error.to_string().contains('漢'), "{error}");
    assert!(error.to_string().contains("Dana"), "{error}");
}

#[test]
fn markup_in_a_string_stays_text() {
    let mut view = sample();
    view.customer = "Dana </p><newpage/> & \"Sons\" <b>".into();
    let document = pages(&view);
    assert_eq!(document.pages.len(), 3);
    assert!(all_words(&document).contains("Dana </p><newpage/> & \"Sons\" <b>"));
}
