//! The cubic yard: what a thickness takes.
//!
//! Square feet × inches ÷ 324 is cubic yards: 27 cu ft to the yard, 12 in to
//! the foot. Exact by definition; the published coverages of 2, 4 and 6 in
//! (162, 81, 54 sq ft) agree.

use std::ops::{Div, Mul};

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

pub const CUBIC_FEET_IN_A_YARD: Decimal = dec!(27);
pub const INCHES_IN_A_FOOT: Decimal = dec!(12);

/// The rule by which [`volume`] goes.
pub const VOLUME: &str = "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in";

/// Cubic yards that fill so many square feet to so many inches, before any allowance.
///
/// Numbers, or formulas that show themselves. One division, last, so that whole numbers
/// stay exact until then.
pub fn volume<A, T>(square_feet: A, inches: T) -> A
where
    A: Mul<T, Output = A> + Div<Decimal, Output = A>,
{
    square_feet * inches / (CUBIC_FEET_IN_A_YARD * INCHES_IN_A_FOOT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::values::Length;
    use crate::values::rounding::to_places;

    fn length(text: &str) -> Length {
        text.parse().unwrap()
    }

    /// By another road: 1 cu yd is 0.764554857984 m³ exactly, an inch 25.4 mm.
    #[test]
    fn agrees_with_the_metre() {
        for text in [
            "2 in", "3 in", "3.5 in", "4 in", "5 in", "5.5 in", "6 in", "7 in", "8 in", "12 in",
        ] {
            let metres = Decimal::from(length(text).as_nanometres()) / dec!(1_000_000_000);
            let square_metres = dec!(0.764554857984) / metres;
            let covered = square_metres / dec!(0.09290304);
            let taken = volume(covered, length(text).inches());
            assert_eq!(to_places(taken, 9), dec!(1), "{text}");
        }
    }

    #[test]
    fn published_examples() {
        #[track_caller]
        fn case(long: &str, wide: &str, thick: &str, yards: Decimal) {
            let area = length(long) * length(wide);
            let volume = volume(area.square_feet(), length(thick).inches());
            assert_eq!(to_places(volume, 4), yards, "{long} x {wide}");
        }
        // A house-and-garden page: 95.31 cu ft, 3.53 cu yd.
        case("12'-6\"", "15'-3\"", "6 in", dec!(3.5301));
        // A home-repair page prints 2.23 for this; exact is 2.2222.
        case("12 ft", "15 ft", "4 in", dec!(2.2222));
        // A garden page that rounded 4 in to 0.3333 ft prints 8.88.
        case("36 ft", "20 ft", "4 in", dec!(8.8889));
    }
}
