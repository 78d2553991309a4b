//! Paths measured by hand: the length of the middle times the width.

use super::*;

fn leg(text: &str) -> PathLeg {
    let mut leg = PathLeg {
        direction: Direction::East,
        length: Length::ZERO,
        bulge: Length::ZERO,
        bend: Length::ZERO,
    };
    for part in text.split(',') {
        let (word, length) = part.trim().split_once(' ').unwrap();
        let length = length.parse().unwrap();
        match word {
            "left" => leg.bulge = length,
            "right" => leg.bulge = -length,
            "bend" => leg.bend = length,
            way => (leg.direction, leg.length) = (way.parse().unwrap(), length),
        }
    }
    leg
}

fn path(text: &str, width: &str) -> Result<Outline, PathError> {
    let legs: Vec<PathLeg> = text.split(';').map(leg).collect();
    Outline::path(&legs, width.parse().unwrap())
}

/// By hand: the length of the middle line times the width, whatever bends there are.
#[test]
fn its_area_is_the_length_of_its_middle_times_its_width() {
    #[track_caller]
    fn case(text: &str, width: &str, length: Decimal) {
        let outline = path(text, width).unwrap();
        let width: Length = width.parse().unwrap();
        let off = (outline.area() - length * width.feet()).abs();
        assert!(
            off < dec!(0.000001),
            "{text}: {} is off {off}",
            outline.area()
        );
        // Both edges together are as long as the middle twice, but for what a sharp bend adds.
        assert!(outline.sides().len() <= 4 * text.split(';').count() + 2);
    }
    case("east 20 ft", "4 ft", dec!(20));
    case("east 20 ft; north 12 ft", "4 ft", dec!(32));
    case(
        "east 20 ft; northeast 12 ft; south 9 ft",
        "3 ft 5 1/2 in",
        dec!(41),
    );
    case(
        "west 20 ft; south 12 ft; west 3 ft; north 9 ft",
        "2 ft",
        dec!(44),
    );
    // A quarter of a circle around 6 ft in place of 6 ft of each leg: 14 + 6 + 3π.
    let quarter = Decimal::PI * dec!(3);
    case(
        "east 20 ft, bend 6 ft; north 12 ft",
        "4 ft",
        dec!(20) + quarter,
    );
    case(
        "east 20 ft, bend 6 ft; south 12 ft",
        "4 ft",
        dec!(20) + quarter,
    );
    // The tightest bend: its inner edge is a point.
    case(
        "east 20 ft, bend 2 ft; north 12 ft",
        "4 ft",
        dec!(28) + Decimal::PI,
    );
    // Two bends that take all of the leg between them.
    case(
        "east 9 ft, bend 3 ft; north 6 ft, bend 3 ft; west 9 ft",
        "4 ft",
        dec!(12) + quarter,
    );
    // An eighth of a circle: its tangents are 8 × tan 22.5° long.
    let tangent = dec!(8) * dec!(0.41421356237309504880);
    case(
        "north 20 ft, bend 8 ft; northwest 12 ft",
        "5 ft",
        dec!(32) - tangent * dec!(2) + Decimal::PI * dec!(2),
    );
    // The tightest bend of an eighth, whose two ends come out a nanometre apart.
    let tangents = dec!(100) * dec!(0.41421356237309504880);
    case(
        "west 154.25 in, bend 30.5 in; southwest 149.25 in, bend 19.5 in; west 147.75 in",
        "39 in",
        (dec!(451.25) - tangents + Decimal::PI * dec!(12.5)) / dec!(12),
    );
    // Half a circle of 10 ft across, and an arc of 16 ft chord and 18 in rise (16.3724 ft).
    case("east 10 ft, left 5 ft", "4 ft", Decimal::PI * dec!(5));
    case(
        "east 16 ft, right 18 in",
        "3 ft",
        dec!(16.372402249619704231599),
    );
    // An S runs on smoothly.
    let two = dec!(2) * dec!(16.372402249619704231599);
    case(
        "east 16 ft, right 18 in; east 16 ft, left 18 in",
        "3 ft",
        two,
    );
}

#[test]
fn what_is_no_path_says_where() {
    #[track_caller]
    fn case(text: &str, width: &str, error: &PathError) {
        assert_eq!(path(text, width).as_ref().unwrap_err(), error, "{text}");
    }
    case(
        "east 9 ft; west 5 ft",
        "2 ft",
        &PathError::NoBend { leg: 0 },
    );
    case(
        "east 9 ft, bend 3 ft",
        "2 ft",
        &PathError::NoBend { leg: 0 },
    );
    case(
        "east 9 ft, bend 3 ft; west 9 ft",
        "2 ft",
        &PathError::NoBend { leg: 0 },
    );
    case(
        "east 9 ft, bend 6 ft; north 11 ft, bend 6 ft; west 9 ft",
        "4 ft",
        &PathError::NoRoom { leg: 1 },
    );
    case(
        "east 9 ft, bend 1 ft; north 9 ft",
        "4 ft",
        &PathError::TooTight { leg: 0 },
    );
    case(
        "east 9 ft, left 4 ft; east 9 ft",
        "2 ft",
        &PathError::NotSmooth { leg: 1 },
    );
    let deep = WalkError::BulgeTooDeep { leg: 0 };
    case("east 9 ft, left 5 ft", "2 ft", &PathError::Outline(deep));
    let crosses = WalkError::Crosses {
        first: 0,
        second: 2,
    };
    case(
        "east 9 ft; north 3 ft; west 9 ft",
        "4 ft",
        &PathError::Outline(crosses),
    );
}
