//! Outlines walked, measured, moved and turned.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::*;
use crate::geometry::Direction::{East, North, NorthWest, South, SouthWest, West};
use crate::geometry::walks::{legs, walked};
use crate::geometry::{Compass, Direction};

/// An L with an 8 ft notch and a bow of 18 in, walked clockwise from the house corner.
fn patio() -> Vec<Leg> {
    legs("east 24 ft, south 20 ft, west 16 ft bulge 18 in, north 8 ft, west 8 ft, north 12 ft")
}

fn turned(legs: &[Leg], turn: fn(Direction) -> Direction) -> Vec<Leg> {
    legs.iter()
        .map(|l| Leg {
            direction: turn(l.direction),
            ..*l
        })
        .collect()
}

fn mirror(d: Direction) -> Direction {
    match d {
        East => West,
        West => East,
        NorthWest => Direction::NorthEast,
        SouthWest => Direction::SouthEast,
        Direction::NorthEast => NorthWest,
        Direction::SouthEast => SouthWest,
        North | South => d,
    }
}

fn quarter(d: Direction) -> Direction {
    match d {
        East => North,
        North => West,
        West => South,
        South => East,
        NorthWest => SouthWest,
        SouthWest => Direction::SouthEast,
        Direction::SouthEast => Direction::NorthEast,
        Direction::NorthEast => NorthWest,
    }
}

#[test]
fn areas_add_the_bow_to_the_exact_polygon() {
    let outline = Outline::walked(&patio()).unwrap();
    // 24 × 20 less 8 × 8, and the bow over 16 ft with 1.5 ft rise, which was
    // computed for this test with mpmath as R²(θ − sin θ)/2.
    let expected = dec!(416) + dec!(16.1119415062175675572);
    assert!((outline.area() - expected).abs() < dec!(0.0000000000000000001));
    let around = dec!(72) + dec!(16.3724022496197042316);
    assert!((outline.perimeter() - around).abs() < dec!(0.0000000000000000001));
}

#[test]
fn twelve_legs_of_five_inches_are_exactly_five_feet() {
    let east = "east 5 in, ".repeat(12);
    let outline = walked(&format!("{east}north 1 ft, west 5 ft, south 1 ft"));
    assert_eq!(outline.area(), dec!(5));
    assert_eq!(outline.perimeter(), dec!(12));
    assert_eq!(outline.sides().len(), 15);
    let size = (Length::feet_whole(5), Length::feet_whole(1));
    assert_eq!(outline.is_rectangle(), Some(size));
}

#[test]
fn turning_mirroring_and_moving_change_no_quantity() {
    let walked = |legs: &[Leg]| Outline::walked(legs).unwrap();
    let slanted = legs("east 10 ft, north 6 ft, northwest 8 ft 5 13/16 in, west 4 ft, south 12 ft");
    for legs in [patio(), slanted] {
        let plain = walked(&legs);
        let same = |other: &Outline| {
            let off = (other.area() - plain.area()).abs();
            assert!(off < dec!(0.0000001), "area off by {off}");
            let off = (other.perimeter() - plain.perimeter()).abs();
            assert!(off < dec!(0.0000001), "perimeter off by {off}");
        };
        same(&walked(&turned(&legs, mirror)));
        same(&walked(&turned(&legs, quarter)));
        let away = plain.moved(Point::new(123_456_789, -987_654_321));
        assert_eq!(away.area(), plain.area());
        assert_eq!(away.perimeter(), plain.perimeter());
    }
}

#[test]
fn either_way_round_gives_the_slab_on_the_left_and_remembers_the_legs() {
    let outline = Outline::walked(&patio()).unwrap();
    let legs: Vec<usize> = outline.sides().iter().map(|side| side.leg).collect();
    assert_eq!(legs, [0, 5, 4, 3, 2, 1]);
    let facing: Vec<Option<Compass>> = outline.sides().iter().map(Side::facing).collect();
    let expected = [
        Compass::North,
        Compass::West,
        Compass::South,
        Compass::West,
        Compass::South,
        Compass::East,
    ];
    assert_eq!(facing, expected.map(Some));
    let (low, high) = outline.bounds();
    let feet = |v: i64| Length::nanometres(v).feet();
    assert_eq!(
        [low.x, low.y, high.x, high.y].map(feet),
        [dec!(0), dec!(-21.5), dec!(24), dec!(0)]
    );
}

#[test]
fn an_inward_bulge_takes_away_what_an_outward_one_adds() {
    let with = |inches| {
        let mut legs = patio();
        legs[2].bulge = Length::inches_whole(inches);
        Outline::walked(&legs).unwrap().area()
    };
    assert_eq!(with(18) + with(-18), dec!(2) * with(0));
    assert_eq!(with(0), dec!(416));
}

#[test]
fn a_circle_is_exact() {
    let circle = Outline::circle(Length::feet_whole(18));
    assert_eq!(
        crate::values::rounding::to_places(circle.area(), 3),
        dec!(254.469)
    );
    assert_eq!(
        crate::values::rounding::to_places(circle.perimeter(), 3),
        dec!(56.549)
    );
    let chorded = Area::square_nanometres(point::doubled_area(&circle.chords()) / 2).square_feet();
    assert!(chorded < circle.area() && circle.area() - chorded < dec!(0.15));
}

#[test]
fn a_half_circle_needs_two_legs() {
    let area = walked("east 10 ft, west 10 ft bulge 60 in").area();
    assert!((area - Decimal::PI * dec!(12.5)).abs() < dec!(0.00000000000000000001));
}

#[test]
fn a_small_tape_error_is_spread_and_right_angles_stay() {
    let outline = walked("east 24 ft, north 12 ft 1/4 in, west 23 ft 11 5/8 in, south 12 ft");
    let (wide, deep) = outline.is_rectangle().expect("still square");
    assert_eq!(wide.inches().round_dp(3), dec!(287.812));
    assert_eq!(deep.inches().round_dp(3), dec!(144.125));
}

#[test]
fn what_is_not_an_outline_is_refused() {
    #[track_caller]
    fn case(walk: &str, error: &WalkError, says: &str) {
        assert_eq!(Outline::walked(&legs(walk)), Err(error.clone()));
        assert_eq!(error.to_string(), says);
    }
    case(
        "east 10 ft, west 10 ft",
        &WalkError::TooFew,
        "an outline needs at least three legs",
    );
    case(
        "east 10 ft, north 5 ft, west 9 ft, south 5 ft 1 in",
        &WalkError::NotClosed {
            east: Length::feet_whole(1),
            north: Length::inches_whole(-1),
        },
        "the walk ends 1 ft east and 1 in south of where it began",
    );
    let crosses = |first, second| WalkError::Crosses { first, second };
    case(
        "east 10 ft, north 10 ft, west 5 ft, south 12 ft, west 5 ft, north 2 ft",
        &crosses(0, 3),
        "legs 1 and 4 cross or touch",
    );
    case(
        "east 10 ft, west 4 ft, north 3 ft, west 6 ft, south 3 ft",
        &crosses(0, 1),
        "legs 1 and 2 cross or touch",
    );
    case(
        "east 10 ft, north 4 ft, west 10 ft bulge 61 in, south 4 ft",
        &WalkError::BulgeTooDeep { leg: 2 },
        "the bulge of leg 3 is more than half its length",
    );
    case(
        "east 10 ft, west 4 ft, west 6 ft",
        &WalkError::NoArea,
        "all legs lie on one line",
    );
}

#[test]
fn directions_are_read_as_people_write_them() {
    assert_eq!("North-East".parse(), Ok(Direction::NorthEast));
    assert_eq!("sw".parse(), Ok(SouthWest));
    assert_eq!(
        "up".parse::<Direction>().map_err(|e| e.code),
        Err("bad-direction")
    );
}

#[test]
fn a_closing_error_is_remembered_and_larger_ones_need_a_longer_walk() {
    let walk = |feet: &str, short: &str| {
        let said = format!("east {feet}, north 12 ft, west {short}, south 12 ft");
        Outline::walked(&legs(&said))
    };
    // 1/200 of 72 ft less 2 in is 4.31 in.
    let spread = walk("24 ft", "23 ft 10 in").unwrap();
    assert_eq!(spread.closing_error().east, Length::inches_whole(2));
    assert_eq!(spread.closing_error().distance(), Length::inches_whole(2));
    assert_eq!(
        spread.moved(Point::new(1, 1)).closing_error(),
        spread.closing_error()
    );
    assert!(walk("24 ft", "23 ft 7 3/4 in").is_ok());
    assert!(walk("24 ft", "23 ft 7 1/2 in").is_err());
    // Never over 6 in, however far the walk was, and 1/2 in however short.
    assert!(walk("240 ft", "239 ft 6 in").is_ok());
    assert!(walk("240 ft", "239 ft 5 15/16 in").is_err());
    let limit = |feet: i64| walk::closing_limit(Length::feet_whole(feet));
    assert_eq!(
        [limit(4), limit(100), limit(800)].map(Length::inches),
        [dec!(0.5), dec!(6), dec!(6)]
    );
}

#[test]
fn the_way_back_to_the_start_needs_no_measure() {
    let legs = legs("east 12 ft, north 9 ft");
    let triangle = Outline::walked_back(&legs, Length::ZERO).unwrap();
    assert_eq!(triangle.area(), dec!(54));
    assert_eq!(triangle.perimeter(), dec!(36));
    assert_eq!(triangle.sides()[2].leg, 2);
    assert_eq!(triangle.closing_error(), ClosingError::default());
    let bulged = Outline::walked_back(&legs, Length::inches_whole(6)).unwrap();
    assert!(triangle.area() < bulged.area());
    let deep = Outline::walked_back(&legs, Length::feet_whole(8));
    assert_eq!(deep, Err(WalkError::BulgeTooDeep { leg: 2 }));
    let short = Outline::walked_back(&legs[..1], Length::ZERO);
    assert_eq!(short, Err(WalkError::TooFew));
}

/// Ends are rounded to a nanometre, and a hair over 12 ft would take a stake more.
#[test]
fn a_slanted_side_is_as_long_as_it_was_measured() {
    for length in ["12 ft", "9 ft", "7 ft 3 1/4 in", "3 m", "10 ft 1/64 in"] {
        let ways = ["northwest", "southwest", "southeast", "northeast"];
        let said = ways.map(|way| format!("{way} {length}")).join(", ");
        let outline = walked(&said);
        for side in outline.sides() {
            let wanted = length.parse::<Length>().unwrap();
            assert_eq!(side.length(), wanted.feet(), "{length}");
        }
    }
}
