//! Shapes as they are said, and what leaves one open.

use super::*;
use crate::input::phrases::SizePhrase;

fn feet(n: i64) -> Length {
    Length::feet_whole(n)
}

#[test]
fn reads_shapes_as_they_are_said() {
    #[track_caller]
    fn case(text: &str, shape: ShapePhrase) {
        assert_eq!(text.parse(), Ok(SizePhrase::Shape(shape)), "{text}");
    }
    let right = ShapePhrase::RightTriangle {
        east_west: feet(12),
        north_south: feet(9),
        square: Direction::SouthWest,
    };
    case("triangle 12 ft x 9 ft, square at southwest", right);
    case("triangle 12 ft by 9 ft with square at south-west", right);
    let sides = [feet(9), feet(12), feet(15)];
    case(
        "triangle 9 ft x 12 ft x 15 ft",
        ShapePhrase::Triangle { sides },
    );
    let trapezoid = |square| ShapePhrase::Trapezoid {
        south: feet(12),
        north: feet(8),
        apart: feet(10),
        square,
    };
    case("trapezoid 12 ft and 8 ft, 10 ft apart", trapezoid(None));
    case(
        "trapezoid 12 ft and 8 ft and 10 ft apart, square at west",
        trapezoid(Some(Direction::West)),
    );
    let ring = ShapePhrase::Ring {
        outside: feet(20),
        inside: feet(8),
    };
    case("ring 20 ft outside, 8 ft inside", ring);
    case("ring 20 ft outside and 8 ft inside", ring);
    let sector = |radius, angle, toward| ShapePhrase::Sector {
        radius,
        angle,
        toward,
    };
    case(
        "sector 12 ft radius, 67.5 degrees, toward northeast",
        sector(
            feet(12),
            "67.5 degrees".parse().unwrap(),
            Direction::NorthEast,
        ),
    );
    let ring_sector = ShapePhrase::RingSector {
        outside: feet(12),
        inside: feet(8),
        angle: Angle::QUARTER,
        toward: Direction::North,
    };
    case(
        "ring sector 12 ft outside radius and 8 ft inside radius, 90 degrees, toward north",
        ring_sector,
    );
    case(
        "half circle 12 ft, flat at north",
        sector(feet(6), Angle::HALF, Direction::South),
    );
    case(
        "quarter circle 6 ft radius, square at southwest",
        sector(feet(6), Angle::QUARTER, Direction::NorthEast),
    );
}

#[test]
fn refuses_what_leaves_the_shape_open() {
    #[track_caller]
    fn case(text: &str, code: &str) {
        let found = text.parse::<SizePhrase>().map_err(|e| e.code);
        assert_eq!(found, Err(code), "{text}");
    }
    for text in [
        "triangle",
        "triangle 12 ft x 9 ft",
        "triangle 12 ft x 9 ft, square at north",
        "triangle 12 ft x 9 ft x 7 ft, square at southwest",
        "trapezoid 12 ft and 8 ft",
        "trapezoid 12 ft and 8 ft, 10 ft",
        "trapezoid 12 ft and 8 ft, 10 ft apart, square at north",
        "ring 20 ft, 8 ft",
        "sector 12 ft radius, 90 degrees",
        "ring sector 12 ft outside, 8 ft inside, 90 degrees, toward north",
        "half circle 12 ft",
        "half circle 12 ft, flat at northeast",
        "quarter circle 6 ft, square at southwest",
        "rings 20 ft outside, 8 ft inside",
    ] {
        case(text, "bad-size");
    }
    case("triangle 3 ft x 4 ft x 7 ft", "no-triangle");
    case("ring 8 ft outside, 8 ft inside", "bad-ring");
    case(
        "ring sector 8 ft outside radius, 9 ft inside radius, 90 degrees, toward north",
        "bad-ring",
    );
    case(
        "sector 0.00001 in radius, 0.5 degrees, toward northeast",
        "bad-size",
    );
    case(
        "sector 12 ft radius, 361 degrees, toward north",
        "bad-angle",
    );
    case(
        "sector 12 radius, 90 degrees, toward north",
        "length-without-unit",
    );
    case(
        "sector 12 ft radius, 90 degrees, toward up",
        "bad-direction",
    );
}
