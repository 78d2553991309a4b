//! Areas and sides of shapes, held against formulas and by hand.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::*;
use crate::geometry::joints::{Asked, lay_out};
use crate::values::rounding;

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

fn inches(n: i64) -> Length {
    Length::inches_whole(n)
}

fn angle(text: &str) -> Angle {
    text.parse().unwrap()
}

fn lengths(outline: &Outline) -> Vec<Decimal> {
    let sides = outline.sides().iter();
    sides.map(|side| side.length().normalize()).collect()
}

#[test]
fn a_right_triangle_is_half_its_box_wherever_its_right_angle() {
    for square in [
        Direction::NorthEast,
        Direction::NorthWest,
        Direction::SouthEast,
        Direction::SouthWest,
    ] {
        let triangle = Outline::right_triangle(feet(12), feet(9), square).unwrap();
        assert_eq!(triangle.area(), dec!(54));
        let mut sides = lengths(&triangle);
        sides.sort();
        assert_eq!(sides, [dec!(9), dec!(12), dec!(15)]);
        let corner = angle::place(feet(1), square.eighths());
        let (low, high) = triangle.bounds();
        let x = if corner.x < 0 { low.x } else { high.x };
        let y = if corner.y < 0 { low.y } else { high.y };
        assert!(
            triangle
                .sides()
                .iter()
                .any(|side| side.from == Point::new(x, y))
        );
    }
}

/// 13, 14, 15 has the area 84, and sides stay what was said of them, to a grain.
#[test]
fn three_sides_make_the_triangle_they_were_said_to_make() {
    #[track_caller]
    fn case(sides: [Length; 3], area: Decimal) {
        let triangle = Outline::triangle(sides).unwrap();
        assert_eq!(rounding::to_places(triangle.area(), 5), area);
        assert_eq!(
            lengths(&triangle),
            sides.map(|side| side.feet().normalize())
        );
    }
    case([feet(3), feet(4), feet(5)], dec!(6));
    case([feet(14), feet(15), feet(13)], dec!(84));
    case([feet(4), feet(13), feet(15)], dec!(24));
    case([feet(15), feet(4), feet(13)], dec!(24));
    // By Heron: half the way round is 15 ft, 15 × 5 × 5 × 5 is 1875.
    case([feet(10), feet(10), feet(10)], dec!(43.30127));
    let flat = Outline::triangle([feet(10), feet(4), feet(6)]);
    assert_eq!(flat, Err(WalkError::NoArea));
    let gap = Outline::triangle([feet(1), feet(2), feet(10)]);
    assert_eq!(gap, Err(WalkError::NoArea));
}

#[test]
fn a_trapezoid_is_the_middle_of_its_sides_times_their_distance() {
    for square in [None, Some(Direction::West), Some(Direction::East)] {
        let trapezoid = Outline::trapezoid(feet(12), feet(8), feet(10), square).unwrap();
        assert_eq!(trapezoid.area(), dec!(100));
        let upright = trapezoid
            .sides()
            .iter()
            .filter(|side| side.from.x == side.to.x)
            .count();
        assert_eq!(upright, usize::from(square.is_some()));
    }
    let upward = Outline::trapezoid(feet(8), feet(12), feet(10), Some(Direction::East));
    assert_eq!(upward.unwrap().area(), dec!(100));
}

#[test]
fn a_ring_is_one_circle_less_another() {
    let ring = Outline::ring(feet(20), feet(8)).unwrap();
    let [hole] = ring.holes() else {
        panic!("one hole");
    };
    let area = ring.area() - hole.area();
    let off = (area - Decimal::PI * dec!(84)).abs();
    assert!(off < dec!(0.00000000000000000001), "off by {off}");
    assert!(Outline::ring(feet(8), feet(8)).is_err());
    assert!(Outline::ring(feet(8), feet(9)).is_err());
}

/// πr² × angle ÷ 360, for flat, half, large and odd ones.
#[test]
fn a_sector_is_its_part_of_the_circle() {
    for (text, degrees) in [
        ("90 degrees", dec!(90)),
        ("180 degrees", dec!(180)),
        ("270 degrees", dec!(270)),
        ("0.5 degrees", dec!(0.5)),
        ("67.5 degrees", dec!(67.5)),
        ("200.5 degrees", dec!(200.5)),
        ("359.5 degrees", dec!(359.5)),
    ] {
        let sector = Outline::sector(feet(12), angle(text), Direction::NorthEast).unwrap();
        let share = degrees / dec!(360);
        let off = (sector.area() - Decimal::PI * dec!(144) * share).abs();
        assert!(off < dec!(0.000001), "{text}: area off by {off}");
        let curved = sector.sides().iter().filter(|side| !side.is_straight());
        let arc: Decimal = curved.map(Side::length).sum();
        let off = (arc - Decimal::PI * dec!(24) * share).abs();
        assert!(off < dec!(0.000001), "{text}: arc off by {off}");
        let straight = sector.sides().iter().filter(|side| side.is_straight());
        let straight: Decimal = straight.map(Side::length).sum();
        assert_eq!(straight, dec!(24), "{text}");
    }
}

/// By hand: π × (R² − r²) × degrees ÷ 360; and a second way, the large sector less the small one.
#[test]
fn a_ring_sector_is_a_part_of_its_ring() {
    #[track_caller]
    fn case(outside: i64, inside: i64, degrees: i64) {
        let (large, small) = (feet(outside), feet(inside));
        let angle = angle(&format!("{degrees} degrees"));
        let toward = Direction::SouthEast;
        let found = Outline::ring_sector(large, small, angle, toward).unwrap();
        let squares = Decimal::from(outside * outside - inside * inside);
        let part = Decimal::from(degrees) / dec!(360);
        let near = |a: Decimal, b: Decimal| (a - b).abs() < dec!(0.000001);
        assert!(
            near(found.area(), Decimal::PI * squares * part),
            "{degrees}"
        );
        let sector = |radius| Outline::sector(radius, angle, toward).unwrap().area();
        assert!(
            near(found.area(), sector(large) - sector(small)),
            "{degrees}"
        );
        let around = Decimal::PI * Decimal::TWO * Decimal::from(outside + inside) * part;
        let straight = Decimal::from(outside - inside) * Decimal::TWO;
        assert!(near(found.perimeter(), around + straight), "{degrees}");
    }
    case(12, 8, 90);
    case(12, 8, 30);
    case(20, 3, 180);
    case(9, 5, 300);
    let none = Outline::ring_sector(feet(8), feet(8), Angle::HALF, Direction::North);
    assert_eq!(none, Err(WalkError::NoArea));
}

#[test]
fn a_speck_is_no_sector() {
    let speck = Outline::sector(
        Length::nanometres(100),
        angle("0.5 degrees"),
        Direction::West,
    );
    assert_eq!(speck, Err(WalkError::NoArea));
    let small = Outline::sector(
        Length::sixty_fourths(1),
        angle("0.5 degrees"),
        Direction::West,
    );
    assert!(dec!(0) < small.unwrap().area());
}

#[test]
fn a_sector_looks_where_it_was_told() {
    let half = Outline::sector(inches(72), Angle::HALF, Direction::South).unwrap();
    let (low, high) = half.bounds();
    let shown = [low.x, low.y, high.x, high.y].map(|v| Length::nanometres(v).feet());
    assert_eq!(shown, [dec!(-6), dec!(-6), dec!(6), dec!(0)]);
    let quarter = Outline::sector(feet(6), Angle::QUARTER, Direction::NorthWest).unwrap();
    let (low, high) = quarter.bounds();
    let shown = [low.x, low.y, high.x, high.y].map(|v| Length::nanometres(v).feet());
    assert_eq!(shown, [dec!(-6), dec!(0), dec!(0), dec!(6)]);
}

#[test]
fn panels_tile_every_shape() {
    let square = Direction::SouthWest;
    let shapes = [
        Outline::right_triangle(feet(20), feet(14), square).unwrap(),
        Outline::triangle([feet(14), feet(15), feet(13)]).unwrap(),
        Outline::trapezoid(feet(20), feet(9), feet(13), None).unwrap(),
        Outline::ring(feet(24), feet(9)).unwrap(),
        Outline::sector(feet(12), angle("75 degrees"), Direction::North).unwrap(),
        Outline::sector(feet(12), angle("300 degrees"), Direction::West).unwrap(),
    ];
    for outline in shapes {
        for longest in [4, 6, 9] {
            let found = lay_out(&Asked {
                outline: &outline,
                longest: feet(longest),
                boxes: &[],
                isolated: &[],
                solid: &[],
                meet: &[],
                drawn: None,
            });
            let sum: Decimal = found.panels.iter().map(|panel| panel.area).sum();
            let open: Decimal = outline.holes().iter().map(Outline::area).sum();
            let whole = outline.area() - open;
            assert!((whole - sum).abs() < dec!(0.000001), "{whole} is not {sum}");
        }
    }
}

#[test]
fn corners_may_go_either_way_round() {
    let at = |x: i64, y: i64| Point::new(feet(x).as_nanometres(), feet(y).as_nanometres());
    let corners = [at(0, 0), at(24, 0), at(24, 12), at(10, 20)];
    let with = |corners: [Point; 4]| {
        let mut all = corners.map(|at| (at, Length::ZERO));
        // The side between the second corner and the third, whichever way it is walked.
        all[1].1 = inches(18);
        Outline::cornered(&all).unwrap()
    };
    let one = with(corners);
    let other = with([corners[3], corners[2], corners[1], corners[0]]);
    assert_eq!(one.area(), other.area());
    assert_eq!(one.sides()[1].leg, 1);
    let twice =
        Outline::cornered(&[at(0, 0), at(9, 0), at(9, 0), at(0, 9)].map(|p| (p, Length::ZERO)));
    assert_eq!(
        twice,
        Err(WalkError::Crosses {
            first: 1,
            second: 2
        })
    );
    let crossed =
        Outline::cornered(&[at(0, 0), at(9, 9), at(9, 0), at(0, 9)].map(|p| (p, Length::ZERO)));
    assert!(matches!(crossed, Err(WalkError::Crosses { .. })));
}
