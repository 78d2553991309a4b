//! Middles of areas, by hand and against polygons of many chords.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::*;
use crate::geometry::walks::walked;
use crate::geometry::{Angle, Direction};

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

/// Far below what a thickness shows; slanted chords are known to 25 nm.
fn near(found: Decimal, wanted: Decimal) {
    let off = (found - wanted).abs();
    assert!(off < dec!(0.000000001), "{found}, not {wanted}");
}

#[test]
fn the_middle_of_corners_is_where_the_textbook_says() {
    #[track_caller]
    fn case(outline: &Outline, north: Decimal, east: Decimal) {
        near(outline.middle(Compass::North, []), north);
        near(outline.middle(Compass::South, []), Decimal::ONE - north);
        near(outline.middle(Compass::East, []), east);
        near(outline.middle(Compass::West, []), Decimal::ONE - east);
    }
    let half = dec!(0.5);
    case(&Outline::rectangle(feet(30), feet(20)), half, half);
    // 30 × 10 ft at 25 ft and 10 × 20 ft at 10 ft, of 30 ft; 300 sq ft at 15 ft and 200 at 5 ft.
    let ell = walked("east 30 ft, south 10 ft, west 20 ft, south 20 ft, west 10 ft, north 30 ft");
    let (north, east) = (dec!(9500) / dec!(15000), dec!(5500) / dec!(15000));
    case(&ell, north, east);
    case(
        &ell.moved(Point::new(-7_000_001, 5_300_000_007)),
        north,
        east,
    );
    // Its square corner at the southwest, a third of the way from it.
    let triangle = walked("east 20 ft, northwest 28.284271247 ft, south 20 ft");
    near(triangle.middle(Compass::North, []), Decimal::ONE / dec!(3));
}

#[test]
fn exactly_half_is_exactly_half() {
    for long in ["9.87 m", "30 ft", "17 ft 5 3/8 in"] {
        let long: Length = long.parse().unwrap();
        for outline in [
            Outline::rectangle(long, feet(11)),
            Outline::circle(long).moved(Point::new(1, -7)),
        ] {
            for way in Compass::ALL {
                assert_eq!(outline.middle(way, []), dec!(0.5));
            }
        }
    }
}

/// A half circle has its middle 4 ÷ 3π of its radius off the flat side, a quarter circle off both.
#[test]
fn the_middle_of_curves_is_where_the_textbook_says() {
    let off = dec!(4) / dec!(3) / Decimal::PI;
    let half = Outline::sector(feet(9), Angle::HALF, Direction::North).unwrap();
    near(half.middle(Compass::North, []), off);
    near(half.middle(Compass::South, []), Decimal::ONE - off);
    near(half.middle(Compass::East, []), dec!(0.5));
    let quarter = Outline::sector(feet(8), Angle::QUARTER, Direction::NorthEast).unwrap();
    near(quarter.middle(Compass::North, []), off);
    near(quarter.middle(Compass::East, []), off);
}

/// Each curve cut into many chords, finer than the outline's own.
fn fine(outline: &Outline) -> Outline {
    let cut = |side: &Side| -> Vec<Point> {
        let mut parts = vec![*side];
        while !side.is_straight() && parts.len() < 4096 {
            parts = parts.iter().flat_map(halves).collect();
        }
        parts.iter().map(|part| part.from).collect()
    };
    let corners: Vec<Point> = outline.sides().iter().flat_map(cut).collect();
    let next = corners.iter().cycle().skip(1);
    let sides = corners.iter().zip(next).enumerate();
    let sides = sides.map(|(leg, (&from, &to))| Side {
        from,
        to,
        bulge: Length::ZERO,
        leg,
    });
    Outline::of(sides.collect(), None)
}

/// Both halves of an arc: its top lies the rise outward of the middle of its chord.
fn halves(side: &Side) -> [Side; 2] {
    let (x, y) = (side.to.x - side.from.x, side.to.y - side.from.y);
    let t = side.bulge.feet() / side.chord();
    let at = |from: i64, along: i64, out: i64| {
        let off = Decimal::from(along) / Decimal::TWO + t * Decimal::from(out);
        from + i64::try_from(rounding::to_places(off, 0)).unwrap()
    };
    let top = Point::new(at(side.from.x, x, y), at(side.from.y, y, -x));
    let half = arc::half(t * Decimal::TWO);
    [(side.from, top), (top, side.to)].map(|(from, to)| {
        let chord = Side { from, to, ..*side }.chord();
        let bulge = Length::of_feet(half * chord / Decimal::TWO);
        Side {
            from,
            to,
            bulge,
            leg: 0,
        }
    })
}

#[test]
fn curves_agree_with_many_chords() {
    let swells = walked(
        "east 24 ft, south 20 ft, west 16 ft bulge 18 in, north 8 ft, west 8 ft, north 12 ft",
    );
    let hollow = walked(
        "east 24 ft bulge -3 ft, southeast 10 ft bulge 2 ft, south 20 ft, west 31 ft 0.8528137 in, north 27 ft 0.852813 in",
    );
    let deep = walked("east 10 ft bulge 5 ft, south 12 ft, west 10 ft bulge 1/8 in, north 12 ft");
    let around: Angle = "130 degrees".parse().unwrap();
    let ring = Outline::ring_sector(feet(20), feet(9), around, Direction::SouthWest).unwrap();
    for outline in [swells, hollow, deep, ring] {
        let fine = fine(&outline);
        for way in Compass::ALL {
            let start = outline.start(way);
            let (found, wanted) = (outline.moment(way, start), fine.moment(way, start));
            let off = (found / outline.area() - wanted / fine.area()).abs();
            assert!(off < dec!(0.000001), "{way:?}: {off} ft");
        }
    }
}

#[test]
fn what_is_open_pulls_the_middle_away() {
    let slab = Outline::rectangle(feet(20), feet(10));
    let hole = Outline::rectangle(feet(4), feet(5)).moved(Point::new(
        feet(14).as_nanometres(),
        feet(1).as_nanometres(),
    ));
    let slab = slab.with_hole(hole).unwrap();
    // 200 sq ft at 10 ft less 20 at 16 ft.
    let east = dec!(1680) / dec!(180) / dec!(20);
    near(slab.middle(Compass::East, slab.holes()), east);
    assert_eq!(slab.middle(Compass::East, []), dec!(0.5));
}

#[test]
fn a_leg_reaches_as_far_as_its_farthest_place() {
    let slab = walked("east 30 ft, south 20 ft, west 30 ft bulge 2 ft, north 20 ft");
    let far = |way, leg| slab.farthest(way, &slab, leg).feet();
    assert_eq!(far(Compass::North, 0), dec!(22));
    assert_eq!(far(Compass::North, 2), dec!(2));
    assert_eq!(far(Compass::South, 2), dec!(22));
    assert_eq!(far(Compass::South, 1), dec!(20));
    let round = Outline::circle(feet(6)).moved(Point::new(feet(3).as_nanometres(), 0));
    assert_eq!(slab.farthest(Compass::East, &round, 0).feet(), dec!(9));
}
