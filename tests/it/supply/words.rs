//! What the customer reads of access, removal and the permit.

use flatwork::inside::documents::views::quote::QuoteView;

use super::NINE_YARDS;
use crate::support::{BUSINESS, FAR_BANK, desk};

fn quote(more: &str) -> QuoteView {
    desk(&format!("{NINE_YARDS}{more}\n"), BUSINESS, FAR_BANK).view()
}

fn scope(view: &QuoteView, word: &str) -> Option<String> {
    let term = view.scope.iter().find(|term| term.word == word);
    term.map(|term| term.text.replace('\u{a0}', " "))
}

fn says(lines: &[String], text: &str) -> bool {
    lines
        .iter()
        .any(|line| line.replace('\u{a0}', " ").contains(text))
}

#[test]
fn each_way_has_its_sentence() {
    #[track_caller]
    fn case(access: &str, sentence: &str) {
        let view = quote(access);
        assert!(says(&view.assumptions, sentence), "{:?}", view.assumptions);
    }
    case(
        "access: chute",
        "The mixer can reach the work with its chute",
    );
    case(
        "access: {by: wheelbarrow, distance: 85 ft, gate: 42 in}",
        "A firm path of 85 ft, 42 in wide from the truck to the work",
    );
    case(
        "access: {by: buggy, gate: 40 in}",
        "A path, 40 in wide from the truck to the work, firm enough for a motor buggy",
    );
    case(
        "access: {by: pump, distance: 110 ft}",
        "Room for the pump beside the mixer, and a way of 110 ft for its hose",
    );
}

#[test]
fn two_ways_have_two_sentences_and_one_way_one() {
    let two = quote(
        "  walk: {size: 40 ft x 4 ft, beside: \"patio, west edge, 0 ft from north end\", edges: {east: isolated}}\npour:\n  - {day: 2026-06-15, slabs: [patio], access: pump}\n  - {day: 2026-06-17, slabs: [walk]}",
    );
    assert!(says(&two.assumptions, "Room for the pump"));
    assert!(says(&two.assumptions, "with its chute"));
    let one = quote("access: pump");
    assert!(!says(&one.assumptions, "with its chute"));
}

#[test]
fn removal_says_what_goes_what_stays_and_where_it_is_sawn() {
    let view = quote(
        "remove:\n  - old drive: {size: 20 ft x 10 ft x 5 in, reinforced: yes, saw cut: 10 ft}\n  - round pad: {size: circle 12 ft, depth: 3 in}\n  - lawn soil: {size: 200 sq ft x 8 in, of: soil, stays: yes}",
    );
    assert_eq!(
        scope(&view, "Remove").as_deref(),
        Some(
            "old drive, 20 × 10 ft, sawn along 10 ft; round pad, 12 ft across; hauled away. Lawn soil, 8 in deep; kept on your land"
        )
    );
}

#[test]
fn a_permit_is_excluded_only_while_nobody_takes_it_out() {
    let usual = quote("");
    assert!(says(&usual.not_included, "Town permit"));
    assert_eq!(scope(&usual, "Permit"), None);
    let ours = quote("permit: town permit");
    assert!(!says(&ours.not_included, "ermit"));
    assert_eq!(
        scope(&ours, "Permit").as_deref(),
        Some("taken out by us, in the price")
    );
    let none = quote("permit: none");
    assert!(!says(&none.not_included, "ermit"));
    assert_eq!(scope(&none, "Permit"), None);
    let theirs = quote("permit: customer");
    assert!(!says(&theirs.not_included, "Town permit"));
    assert!(says(
        &theirs.not_included,
        "The permit, which you take out before we start"
    ));
}
