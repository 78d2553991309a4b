//! Sizes of other shapes: `triangle 9 ft x 12 ft x 15 ft`, `ring 20 ft outside, 8 ft inside` and the like.

use std::str::FromStr;

use super::size::positive;
use crate::geometry::{Angle, Direction, Outline, WalkError};
use crate::values::{Length, Unreadable};

/// A shape that a few lengths fix.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShapePhrase {
    /// With a right angle at one corner of its box.
    RightTriangle {
        east_west: Length,
        north_south: Length,
        square: Direction,
    },
    /// The first side along the south, the second from its east end.
    Triangle {
        sides: [Length; 3],
    },
    /// Two sides along the south and the north; the west or the east end may be square.
    Trapezoid {
        south: Length,
        north: Length,
        apart: Length,
        square: Option<Direction>,
    },
    Ring {
        outside: Length,
        inside: Length,
    },
    Sector {
        radius: Length,
        angle: Angle,
        toward: Direction,
    },
}

const TRIANGLE: &str = "write base, height and the corner with the right angle, `triangle 12 ft x 9 ft, square at southwest`, or three sides, `triangle 9 ft x 12 ft x 15 ft`";
const TRAPEZOID: &str = "write the south side, the north side and how far apart they are, `trapezoid 12 ft and 8 ft, 10 ft apart`; where one end is square, add `, square at west`";
const RING: &str = "write both diameters, for example `ring 20 ft outside, 8 ft inside`";
const SECTOR: &str = "write radius, angle and where its middle looks, for example `sector 12 ft radius, 75 degrees, toward north`";
const HALF: &str =
    "write the diameter and where the flat side is, for example `half circle 12 ft, flat at north`";
const QUARTER: &str = "write the radius and the corner with the right angle, for example `quarter circle 6 ft radius, square at southwest`";

impl ShapePhrase {
    /// The shape, when the text begins with the name of one.
    pub(super) fn read(text: &str) -> Option<Result<Self, Unreadable>> {
        type Reader = fn(&[&str]) -> Option<Result<ShapePhrase, Unreadable>>;
        const NAMES: [(&str, Reader, &str); 6] = [
            ("triangle", triangle, TRIANGLE),
            ("trapezoid", trapezoid, TRAPEZOID),
            ("ring", ring, RING),
            ("sector", sector, SECTOR),
            ("half circle", half_circle, HALF),
            ("quarter circle", quarter_circle, QUARTER),
        ];
        let (rest, reader, help) = NAMES.iter().find_map(|(name, reader, help)| {
            let rest = text.strip_prefix(name)?;
            (rest.is_empty() || rest.starts_with(' ')).then_some((rest, reader, help))
        })?;
        let even = rest.replace(" and ", ",").replace(" with ", ",");
        let parts: Vec<&str> = even.split(',').map(str::trim).collect();
        let refuse = |message: String| Unreadable::new("bad-size", message, *help);
        let Some(shape) = reader(&parts) else {
            return Some(Err(refuse(format!("cannot read `{text}` as a size"))));
        };
        Some(shape.and_then(|shape| match shape.outline() {
            Ok(_) => Ok(shape),
            Err(_) => Err(refuse(format!("`{text}` encloses nothing"))),
        }))
    }

    /// The outline it means.
    ///
    /// # Errors
    /// When it encloses nothing, which has been refused on reading.
    pub fn outline(self) -> Result<Outline, WalkError> {
        match self {
            Self::RightTriangle {
                east_west,
                north_south,
                square,
            } => Outline::right_triangle(east_west, north_south, square),
            Self::Triangle { sides } => Outline::triangle(sides),
            Self::Trapezoid {
                south,
                north,
                apart,
                square,
            } => Outline::trapezoid(south, north, apart, square),
            Self::Ring { outside, inside } => {
                Outline::ring(outside, inside).map_err(|_| WalkError::NoArea)
            }
            Self::Sector {
                radius,
                angle,
                toward,
            } => Outline::sector(radius, angle, toward),
        }
    }
}

/// The parts of a phrase that has so many; `None` is a phrase of another form.
type Read = Option<Result<ShapePhrase, Unreadable>>;

fn triangle(parts: &[&str]) -> Read {
    let (lengths, square) = match parts {
        [lengths] => (lengths, None),
        [lengths, square] => (lengths, Some(corner(square)?)),
        _ => return None,
    };
    let by = lengths.replace(" by ", " x ");
    let lengths: Vec<&str> = by.split(['x', 'X', '×']).map(str::trim).collect();
    Some(match (&lengths[..], square) {
        ([east_west, north_south], Some(square)) => {
            both(east_west, north_south).map(|(east_west, north_south)| {
                ShapePhrase::RightTriangle {
                    east_west,
                    north_south,
                    square,
                }
            })
        }
        ([first, second, third], None) => three_sides([first, second, third]),
        _ => return None,
    })
}

fn three_sides(texts: [&str; 3]) -> Result<ShapePhrase, Unreadable> {
    let sides = [
        positive(texts[0])?,
        positive(texts[1])?,
        positive(texts[2])?,
    ];
    let [a, b, c] = sides;
    let longest = a.max(b).max(c);
    let others = a + b + c - longest;
    if others <= longest {
        return Err(Unreadable::new(
            "no-triangle",
            format!("sides of {a}, {b} and {c} make no triangle"),
            format!(
                "the other two make {others} together and have to reach over {longest}; measure the three again"
            ),
        ));
    }
    Ok(ShapePhrase::Triangle { sides })
}

fn trapezoid(parts: &[&str]) -> Read {
    let (south, north, apart, square) = match parts {
        [south, north, apart] => (south, north, apart, None),
        [south, north, apart, square] => {
            let end = square.strip_prefix("square at ")?.parse().ok()?;
            let fits = matches!(end, Direction::East | Direction::West);
            (south, north, apart, Some(fits.then_some(end)?))
        }
        _ => return None,
    };
    let apart = apart.strip_suffix(" apart")?;
    Some(both(south, north).and_then(|(south, north)| {
        Ok(ShapePhrase::Trapezoid {
            south,
            north,
            apart: positive(apart)?,
            square,
        })
    }))
}

fn ring(parts: &[&str]) -> Read {
    let [outside, inside] = parts else {
        return None;
    };
    let (outside, inside) = (
        outside.strip_suffix(" outside")?,
        inside.strip_suffix(" inside")?,
    );
    Some(both(outside, inside).and_then(|(outside, inside)| {
        if outside <= inside {
            return Err(Unreadable::new(
                "bad-ring",
                format!("{inside} inside leaves nothing of a ring of {outside}"),
                "both are diameters, the larger one outside; are they the wrong way round?",
            ));
        }
        Ok(ShapePhrase::Ring { outside, inside })
    }))
}

fn sector(parts: &[&str]) -> Read {
    let [radius, angle, toward] = parts else {
        return None;
    };
    let (radius, toward) = (
        radius.strip_suffix(" radius")?,
        toward.strip_prefix("toward ")?,
    );
    let read = || {
        Ok(ShapePhrase::Sector {
            radius: positive(radius)?,
            angle: angle.parse()?,
            toward: toward.parse()?,
        })
    };
    Some(read())
}

fn half_circle(parts: &[&str]) -> Read {
    let [diameter, flat] = parts else {
        return None;
    };
    let toward = match flat.strip_prefix("flat at ")?.parse().ok()? {
        Direction::North => Direction::South,
        Direction::East => Direction::West,
        Direction::South => Direction::North,
        Direction::West => Direction::East,
        Direction::NorthEast
        | Direction::SouthEast
        | Direction::SouthWest
        | Direction::NorthWest => return None,
    };
    Some(positive(diameter).map(|diameter| ShapePhrase::Sector {
        radius: diameter.half(),
        angle: Angle::HALF,
        toward,
    }))
}

fn quarter_circle(parts: &[&str]) -> Read {
    let [radius, square] = parts else {
        return None;
    };
    let radius = radius.strip_suffix(" radius")?;
    let toward = match corner(square)? {
        Direction::NorthEast => Direction::SouthWest,
        Direction::SouthEast => Direction::NorthWest,
        Direction::NorthWest => Direction::SouthEast,
        _ => Direction::NorthEast,
    };
    Some(positive(radius).map(|radius| ShapePhrase::Sector {
        radius,
        angle: Angle::QUARTER,
        toward,
    }))
}

/// `square at southwest`: one of the four corners.
fn corner(text: &str) -> Option<Direction> {
    let corner = Direction::from_str(text.strip_prefix("square at ")?).ok()?;
    matches!(
        corner,
        Direction::NorthEast | Direction::SouthEast | Direction::SouthWest | Direction::NorthWest
    )
    .then_some(corner)
}

fn both(one: &str, other: &str) -> Result<(Length, Length), Unreadable> {
    Ok((positive(one)?, positive(other)?))
}

#[cfg(test)]
mod tests {
    use super::super::SizePhrase;
    use super::*;

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
}
