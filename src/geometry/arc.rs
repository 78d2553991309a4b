//! Circular arcs by chord and rise, in decimal, without trigonometric functions.
//!
//! With t = 2 × rise / chord, the arc spans 4·atan t. Euler's series
//! atan t = t/(1+t²) · Σ kₙyⁿ with y = t²/(1+t²), k₀ = 1, kₙ = kₙ₋₁·2n/(2n+1)
//! has only positive terms, so nothing cancels, however flat the arc is:
//!
//! - length = chord · Σ kₙyⁿ
//! - area between arc and chord = chord · rise / 4 · (2 + Σ kₙ₊₁yⁿ)
//!
//! The two follow from R·θ and R²(θ − sin θ)/2 by putting in R = chord·(1+t²)/(4t).

use rust_decimal::{Decimal, MathematicalOps};
use rust_decimal_macros::dec;

/// Length of the arc over `chord` with `rise` at its middle, in the unit of both.
pub fn length(chord: Decimal, rise: Decimal) -> Decimal {
    chord * (Decimal::ONE + y(chord, rise) * tail(y(chord, rise)))
}

/// Area between the arc and its chord, in the square of the unit of both.
pub fn segment_area(chord: Decimal, rise: Decimal) -> Decimal {
    chord * rise / dec!(4) * (dec!(2) + tail(y(chord, rise)))
}

/// Moment of that area about the chord, in the cube of the unit of both.
///
/// About the centre it is ∫ x · 2√(R² − x²) dx from the chord to the arc, chord³ / 12; the centre
/// lies R − rise behind the chord.
pub(super) fn segment_moment(chord: Decimal, rise: Decimal) -> Decimal {
    let behind = radius(chord, rise) - rise;
    chord * chord * chord / dec!(12) - segment_area(chord, rise) * behind
}

/// Radius of the arc: (chord²/4 + rise²) / (2 rise).
pub fn radius(chord: Decimal, rise: Decimal) -> Decimal {
    (chord * chord / dec!(4) + rise * rise) / (dec!(2) * rise)
}

/// Area of a whole circle.
pub fn circle_area(diameter: Decimal) -> Decimal {
    Decimal::PI * diameter * diameter / dec!(4)
}

/// Circumference of a whole circle.
pub fn circle_perimeter(diameter: Decimal) -> Decimal {
    Decimal::PI * diameter
}

/// Rise over half the chord for either half of an arc: tan(a/2) from tan a.
pub(super) fn half(t: Decimal) -> Decimal {
    let hypotenuse = (Decimal::ONE + t * t)
        .sqrt()
        .expect("one plus a square is positive");
    t / (Decimal::ONE + hypotenuse)
}

fn y(chord: Decimal, rise: Decimal) -> Decimal {
    let t = dec!(2) * rise / chord;
    t * t / (Decimal::ONE + t * t)
}

/// Σ kₙ₊₁yⁿ from n = 0; y is at most about one half, so each term at least halves.
fn tail(y: Decimal) -> Decimal {
    let mut n = Decimal::ONE;
    let mut term = dec!(2) / dec!(3);
    let mut sum = Decimal::ZERO;
    // The last of 28 decimals only rounds to itself; what follows is less than it.
    while dec!(0.000000000000000000000000001) < term {
        sum += term;
        n += Decimal::ONE;
        let doubled = dec!(2) * n;
        term = term * y * doubled / (doubled + Decimal::ONE);
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Expected values computed for this test with Python's mpmath at 40 digits,
    /// from R·θ and R²(θ − sin θ)/2.
    #[test]
    fn arcs_agree_with_the_textbook_formulas() {
        #[track_caller]
        fn case(chord: Decimal, rise: Decimal, long: Decimal, area: Decimal) {
            let close = |a: Decimal, b: Decimal| (a - b).abs() < dec!(0.00000000000000000001);
            assert!(close(length(chord, rise), long), "{}", length(chord, rise));
            let found = segment_area(chord, rise);
            assert!(close(found, area), "{found}");
        }
        case(
            dec!(16),
            dec!(1.5),
            dec!(16.372402249619704231599),
            dec!(16.1119415062175675572385),
        );
        case(
            dec!(18),
            dec!(9),
            dec!(28.2743338823081391461638),
            dec!(127.234502470386626157737),
        );
        case(
            dec!(24),
            dec!(0.125),
            dec!(24.0017360734368406761305),
            dec!(2.00004340210501599669931),
        );
        case(
            dec!(10),
            dec!(4.9),
            dec!(15.5091144158213530666005),
            dec!(38.2755968122145160099025),
        );
    }

    #[test]
    fn a_radius_of_nine_feet_is_254_469_square_feet() {
        // A published worked example gives 254.5; the exact product was computed here.
        let area = circle_area(dec!(18));
        assert_eq!(crate::values::rounding::to_places(area, 3), dec!(254.469));
        let halves = dec!(2) * segment_area(dec!(18), dec!(9));
        assert!((halves - area).abs() < dec!(0.00000000000000000000001));
    }

    #[test]
    fn a_flat_arc_is_two_thirds_of_chord_times_rise() {
        let area = segment_area(dec!(1000), dec!(0.000001));
        assert!((area - dec!(2) / dec!(3) * dec!(0.001)).abs() < dec!(0.000000000000000000001));
    }
}
