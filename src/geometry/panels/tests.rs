//! Joint layouts: known ones, and laws that hold for any slab.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::*;
use crate::geometry::Direction::{self, East, North, South, West};
use crate::geometry::Leg;
use crate::geometry::walks::{legs, walked};

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

/// 24 × 20 ft with an 8 × 8 ft notch at the south-west; the south side bows out by `inches`.
fn patio(inches: i64) -> Outline {
    walked(&format!(
        "east 24 ft, south 20 ft, west 16 ft bulge {inches} in, north 8 ft, west 8 ft, north 12 ft"
    ))
}

#[track_caller]
fn case(outline: &Outline, longest: i64, columns: &[Decimal], rows: &[Decimal], joint: Decimal) {
    let found = panels(outline, feet(longest));
    let shown = |all: &[Length]| -> Vec<Decimal> {
        all.iter()
            .map(|l| l.feet().round_dp(3).normalize())
            .collect()
    };
    assert_eq!(shown(&found.columns), columns, "columns");
    assert_eq!(shown(&found.rows), rows, "rows");
    assert_eq!(found.length.round_dp(2), joint, "joint");
}

#[test]
fn lays_out_common_slabs() {
    let (six, eight) = (dec!(6), dec!(8));
    case(&patio(0), 8, &[eight; 3], &[six, six, eight], dec!(72));
    case(&patio(18), 10, &[eight; 3], &[six, six, eight], dec!(73.5));
    case(
        &Outline::rectangle(feet(12), feet(15)),
        10,
        &[six; 2],
        &[dec!(7.5); 2],
        dec!(27),
    );
    // A constructed case: 36 × 20 ft at 10 ft gives 9 × 10 ft panels and 96 ft of joint.
    case(
        &Outline::rectangle(feet(36), feet(20)),
        10,
        &[dec!(9); 4],
        &[dec!(10); 2],
        dec!(96),
    );
    case(
        &Outline::rectangle(feet(22), feet(4)),
        10,
        &[dec!(4.4); 5],
        &[dec!(4)],
        dec!(16),
    );
    case(
        &Outline::rectangle(feet(4), feet(22)),
        10,
        &[dec!(4)],
        &[dec!(4.4); 5],
        dec!(16),
    );
    case(
        &Outline::rectangle(feet(8), feet(6)),
        10,
        &[eight],
        &[six],
        dec!(0),
    );
    case(
        &Outline::circle(feet(18)),
        10,
        &[dec!(9); 2],
        &[dec!(9); 2],
        dec!(36),
    );
}

#[test]
fn a_bow_that_would_be_too_long_gets_a_joint() {
    let found = panels(&patio(18), feet(8));
    assert_eq!(found.rows, [6, 6, 4, 4].map(feet));
}

#[test]
fn a_narrow_strip_joins_its_neighbour_unless_a_corner_needs_it() {
    // A jog of 1 ft: its north-south line goes, its east-west line stays.
    let jog = walked("east 9 ft, south 6 ft, west 1 ft, south 6 ft, west 8 ft, north 12 ft");
    let found = panels(&jog, feet(10));
    assert_eq!(found.columns, [9].map(feet));
    assert_eq!(found.rows, [6, 6].map(feet));
}

fn shapes() -> Vec<Outline> {
    vec![
        patio(18),
        patio(-18),
        Outline::rectangle(feet(31), feet(17)),
        Outline::circle(feet(25)),
        walked("northeast 20 ft, northwest 30 ft bulge 12 in, southwest 20 ft, southeast 30 ft"),
        walked(
            "east 30 ft, north 20 ft, west 4 ft, south 16 ft, west 22 ft, north 10 ft, west 4 ft, south 14 ft",
        ),
    ]
}

#[test]
fn panels_tile_the_slab_and_keep_within_the_longest() {
    for outline in shapes() {
        for longest in [5, 8, 10, 15] {
            let found = panels(&outline, feet(longest));
            let sum: Decimal = found.panels.iter().map(|p| p.area).sum();
            let whole =
                crate::values::Area::square_nanometres(point::doubled_area(&outline.chords()));
            let off = (whole.square_feet() / Decimal::TWO - sum).abs();
            assert!(off < dec!(0.000001), "off by {off}");
            let long = found.columns.iter().chain(&found.rows);
            assert!(long.into_iter().all(|l| *l <= feet(longest)));
            let (low, high) = outline.bounds();
            for (a, b) in &found.lines {
                let on_box = (a.x == b.x && (a.x == low.x || a.x == high.x))
                    || (a.y == b.y && (a.y == low.y || a.y == high.y));
                assert!(!on_box && a < b);
            }
        }
    }
}

#[test]
fn turning_mirroring_and_moving_change_no_joint() {
    let mirrored = |d| match d {
        East => West,
        West => East,
        d => d,
    };
    let quarter = |d| match d {
        East => North,
        North => West,
        West => South,
        _ => East,
    };
    let patio =
        legs("east 24 ft, south 20 ft, west 16 ft bulge 18 in, north 8 ft, west 8 ft, north 12 ft");
    let with = |turn: &dyn Fn(Direction) -> Direction| {
        let turned = |leg: &Leg| Leg {
            direction: turn(leg.direction),
            ..*leg
        };
        let legs: Vec<Leg> = patio.iter().map(turned).collect();
        panels(&Outline::walked(&legs).unwrap(), feet(7)).length
    };
    let plain = with(&|d| d);
    let same = |other: Decimal| assert!((other - plain).abs() < dec!(0.0000001), "{other} {plain}");
    same(with(&mirrored));
    same(with(&quarter));
    let away = Outline::walked(&patio)
        .unwrap()
        .moved(Point::new(7, -300_000_001));
    assert_eq!(panels(&away, feet(7)).length, plain);
}
