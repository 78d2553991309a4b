//! The cost sheet's pages: complete, inside the margins, nothing on top of anything else, and
//! marked for the office.

use std::fmt::Write as _;

use super::cost_document;
use super::demo::{Demo, PATIO};
use super::quote_tests::reach::{all_words, check_pages};
use crate::advice::advice;
use crate::press::drawing::Rgb;
use crate::press::page::{Document, Ink};

const WALK: &str = include_str!("../../demo-quotes/front-walk.yaml");

fn pages(takeoff: &str) -> Document {
    let demo = Demo::new(takeoff);
    let found = advice(&demo.takeoff, demo.pricing(), &demo.offer, demo.quoted);
    cost_document(&demo.sheet(), &found, Rgb(0, 0, 0)).unwrap_or_else(|error| panic!("{error}"))
}

/// The words of one page.
fn words(document: &Document, page: usize) -> String {
    let runs = document.pages[page].marks.iter();
    runs.filter_map(|mark| match &mark.ink {
        Ink::Glyphs(run) => Some(run.glyphs.iter().map(|glyph| glyph.text.as_str())),
        Ink::Path(_) | Ink::Picture(_) => None,
    })
    .flatten()
    .collect()
}

#[test]
fn every_page_says_twice_whose_it_is() {
    for (takeoff, many) in [(PATIO, 3), (WALK, 2)] {
        let document = pages(takeoff);
        assert_eq!(document.pages.len(), many);
        check_pages("cost sheet", &document);
        for page in 0..document.pages.len() {
            let words = words(&document, page).replace('\u{a0}', " ");
            let count = words.matches("not for the customer").count();
            assert_eq!(count, 2, "{words}");
        }
        assert!(!all_words(&document).contains("555-0142"), "no letterhead");
    }
}

#[test]
fn long_names_and_many_choices_go_on_over_pages() {
    let (mut lumps, mut options) = (String::new(), String::new());
    for i in 1..=30 {
        let name = "a thing with a name that is much too long for its column";
        let _ = writeln!(lumps, "  - {name}, number {i}: {{cost: 1234567.89}}");
    }
    for i in 1..=5 {
        let name = "A long and rather wordy choice that nobody needs";
        let _ = writeln!(
            options,
            "  - {name}, number {i}:\n      add: [clear sealer: {i}00 sq ft]"
        );
    }
    let job = format!(
        "customer: Ira Sample\nslabs: {{walk: 28 ft x 4 ft, patio: {{size: 100 ft x 90 ft}}}}\nextra:\n{lumps}options:\n{options}"
    );
    let document = pages(&job);
    assert!(3 < document.pages.len());
    check_pages("long", &document);
    let words = all_words(&document);
    for expected in ["number 30", "37,037,036.70", "Every choice"] {
        assert!(words.contains(expected), "{expected}");
    }
}
