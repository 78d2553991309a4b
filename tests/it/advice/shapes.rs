//! Questions about outlines.

use super::{Files, SIZE};

#[test]
fn a_narrow_slab_says_that_it_is_meant() {
    let narrow = |wide: &str| Files::new().job(SIZE, &format!("size: 24 ft x {wide}"));
    narrow("12 in").silent("narrow-slab");
    narrow("11 7/8 in").says(
        "narrow-slab",
        "`patio` is only `11 7/8 in` wide",
        "did you mean feet?",
    );
    narrow("3 in").says("narrow-slab", "`3 in` wide", "mow strip");
    // Its panels are as long as was said, and nobody asks for square ones.
    narrow("6 in").silent("long-panel");
    let path = |wide: &str| {
        let path = format!("path: [east 24 ft, north 9 ft], width: {wide}, called: front");
        Files::new()
            .job(SIZE, &path)
            .job("north: house", "end: house")
    };
    path("6 in").says("narrow-slab", "`6 in` wide", "curb");
    path("4 ft").silent("narrow-slab");
    let named = narrow("6 in").job("patio:", "mow strip:");
    named
        .job("mow strip: {", "mow strip: {kind: patio, ")
        .silent("narrow-slab");
}

#[test]
fn a_closing_error_is_told() {
    let walked = |back: &str| {
        let outline = format!("outline: [east 24 ft, south 16 ft, west {back}, north 16 ft]");
        Files::new().job(SIZE, &outline)
    };
    walked("23 ft 10 in").says(
        "closing-error",
        "ends 2 in east from",
        "common practice, no source",
    );
    walked("24 ft 1/8 in").says("closing-error", "ends 1/8 in west from", "back to start");
    walked("24 ft").silent("closing-error");
    // Finer than the tape tells.
    walked("24 ft 1/32 in").silent("closing-error");
}

#[test]
fn a_very_long_slab_asks_for_its_unit() {
    let long = |long: &str| Files::new().job(SIZE, &format!("size: {long} x 16 ft"));
    long("150 ft").silent("long-slab");
    long("60 yd").says("long-slab", "`patio` is `180 ft` long", "A yard is 3 ft");
}

#[test]
fn what_goes_on_beyond_an_edge_lies_there() {
    let edge = |kind: &str| {
        let ties = "\ndowels:\n  ties: {item: stake, bar: no. 4, adhesive: none}\nfiber:\n";
        let files = Files::new().book("\nfiber:\n", ties);
        files.job(
            "edges: {north: house}",
            &format!("edges: {{south: {kind}}}"),
        )
    };
    for kind in ["keyed bulkhead", "tied bulkhead"] {
        edge(kind).says("bulkhead-alone", &format!("is a `{kind}`"), "`beside`");
    }
    edge("bulkhead").silent("bulkhead-alone");
    let beside = "remove:\n  - ";
    let two =
        "pour:\n  - {day: 2026-05-01, slabs: [patio]}\n  - {day: 2026-05-04, slabs: [more]}\n";
    edge("keyed bulkhead")
        .job("pour: 2026-05-01\n", two)
        .job(beside, &format!("  more: {{kind: patio, size: 24 ft x 8 ft, beside: \"patio, south edge, 0 ft from west end\"}}\n{beside}"))
        .silent("bulkhead-alone");
    let matched = |edges: &str| {
        let matched = "match: [8 ft from the west end of the south side]";
        Files::new().job(
            "edges: {north: house}",
            &format!("edges: {{{edges}}}, {matched}"),
        )
    };
    matched("north: house").says(
        "match-in-the-open",
        "its edge there is open",
        "existing concrete",
    );
    matched("north: house, south: existing concrete").silent("match-in-the-open");
}

#[test]
fn a_deck_around_a_pool_is_isolated_within() {
    let deck = |edges: &str| {
        Files::new().job(
            "edges: {north: house}",
            &format!("cut out: [pool: {{size: 8 ft x 4 ft, at: 8 ft from west and 6 ft from north{edges}}}]"),
        )
    };
    deck("").says("no-isolation", "no edge of `patio`", "");
    deck(", edge: isolated").silent("no-isolation");
}
