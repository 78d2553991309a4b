//! Questions about outlines.

use super::{Files, SIZE};

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
