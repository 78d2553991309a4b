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
