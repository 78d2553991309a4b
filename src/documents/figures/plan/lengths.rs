//! Lengths as they stand on a drawing: `22′-0″`, `6′-3½″`, `9″`.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::geometry::Side;
use crate::values::{Length, rounding};

const EIGHTHS: [&str; 8] = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

/// To the nearest eighth of an inch.
pub(super) fn dimension(length: Length) -> String {
    let eighths = usize::try_from(eighths(length)).expect("a dimension is not negative");
    let (feet, rest) = (eighths / 96, eighths % 96);
    let (inches, part) = (rest / 8, EIGHTHS[rest % 8]);
    let inches = if inches == 0 && !part.is_empty() {
        String::new()
    } else {
        inches.to_string()
    };
    if feet == 0 {
        format!("{inches}{part}″")
    } else {
        // `5′-½″` reads badly; a zero keeps feet and fractions apart.
        let zero = if inches.is_empty() { "0 " } else { "" };
        format!("{feet}′-{zero}{inches}{part}″")
    }
}

/// The same rounding, as it is said aloud: `22 ft`, `6 ft 3 1/2 in`.
pub(super) fn spoken(length: Length) -> String {
    Length::sixty_fourths(eighths(length) * 8).to_string()
}

/// A side's length along it, which may be no whole nanometre.
pub(super) fn of_side(side: &Side) -> Length {
    let foot = Decimal::from(Length::feet_whole(1).as_nanometres());
    let long = rounding::to_places(side.length() * foot, 0).to_i64();
    Length::nanometres(long.expect("lengths are limited on reading"))
}

fn eighths(length: Length) -> i64 {
    rounding::to_places(length.inches() * Decimal::from(8), 0)
        .to_i64()
        .expect("lengths are limited on reading")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dimensions_read_as_on_a_drawing() {
        #[track_caller]
        fn case(text: &str, shown: &str) {
            assert_eq!(dimension(text.parse().unwrap()), shown);
        }
        case("22 ft", "22′-0″");
        case("6 ft 3 1/2 in", "6′-3½″");
        case("9 in", "9″");
        case("5 ft 1/2 in", "5′-0 ½″");
        case("1/2 in", "½″");
        case("11 31/32 in", "1′-0″");
    }
}
