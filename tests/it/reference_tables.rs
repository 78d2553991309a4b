//! Published constants, tables and curves, each with its source and how far that was read.
//!
//! The figures here were collected apart from the code. Marks: P a passage of
//! the document was seen, S a page restating it, C computed from a formula, M
//! from memory. Where a source prints a slip, the test says so and expects the
//! exact answer.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use flatwork::inside::tables::bars::Bar;
use flatwork::inside::tables::yard;
use flatwork::inside::values::Length;

#[track_caller]
fn length(text: &str) -> Length {
    text.parse().expect("written in this file")
}

#[track_caller]
fn near(found: Decimal, expected: Decimal, within: Decimal) {
    let error = (found - expected).abs();
    assert!(error <= within, "found {found}, expected {expected}");
}

/// sq ft/cu yd and cu yd/100 sq ft. C; the rows of 2, 4 and 6 in are also printed by a
/// ready-mix supplier (S).
#[test]
fn coverage_of_a_yard() {
    #[track_caller]
    fn case(thick: &str, covers: Decimal, takes: Decimal) {
        let thick = length(thick);
        near(yard::volume(covers, thick.inches()), dec!(1), dec!(0.00002));
        let hundred = yard::volume(dec!(100), thick.inches());
        near(hundred, takes, dec!(0.00005));
    }
    case("2 in", dec!(162.00), dec!(0.6173));
    case("3 in", dec!(108.00), dec!(0.9259));
    case("3.5 in", dec!(92.571), dec!(1.0802));
    case("4 in", dec!(81.00), dec!(1.2346));
    case("5 in", dec!(64.80), dec!(1.5432));
    case("5.5 in", dec!(58.909), dec!(1.6975));
    case("6 in", dec!(54.00), dec!(1.8519));
    case("7 in", dec!(46.286), dec!(2.1605));
    case("8 in", dec!(40.50), dec!(2.4691));
    case("12 in", dec!(27.00), dec!(3.7037));
}

/// A ready-mix producers' guide forms "3 in" paving with 2x4 lumber (S): filled to
/// the top of the form it takes 16.7% more. C.
#[test]
fn a_two_by_four_form_is_three_and_a_half_inches() {
    let of = |thick: &str| yard::volume(dec!(100), length(thick).inches());
    let more = of("3.5 in") / of("3 in");
    near(more, dec!(1.167), dec!(0.0005));
}

/// ASTM A615/A615M on three secondary pages that agree (S). Areas and weights as
/// the metric columns of the same pages give them: kg/m to three places.
#[test]
fn bars_by_their_metric_column() {
    let kilograms = [
        (Bar::No3, dec!(0.560)),
        (Bar::No4, dec!(0.994)),
        (Bar::No5, dec!(1.552)),
        (Bar::No6, dec!(2.235)),
        (Bar::No7, dec!(3.042)),
        (Bar::No8, dec!(3.973)),
    ];
    for (bar, kilograms_a_metre) in kilograms {
        // Exact by definition: 0.45359237 kg to the pound, 0.3048 m to the foot.
        let metric = bar.weight_per_foot() * dec!(0.45359237) / dec!(0.3048);
        near(metric, kilograms_a_metre, dec!(0.0008));
    }
}
