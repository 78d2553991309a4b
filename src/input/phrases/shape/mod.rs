//! Sizes of other shapes: `triangle 9 ft x 12 ft x 15 ft`, `ring 20 ft outside, 8 ft inside` and the like.

use super::reader::Said;
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
    /// Between two radii of a ring; both are radii here.
    RingSector {
        outside: Length,
        inside: Length,
        angle: Angle,
        toward: Direction,
    },
}

/// How a shape is read from what follows its name.
type ShapeReader = fn(&[Said<'_>]) -> Result<ShapePhrase, Unreadable>;

const SHAPES: &[(&str, &str, ShapeReader)] = &[
    (
        "triangle",
        "write base, height and the corner with the right angle, `triangle 12 ft x 9 ft, square at southwest`, or three sides, `triangle 9 ft x 12 ft x 15 ft`",
        triangle,
    ),
    (
        "trapezoid",
        "write the south side, the north side and how far apart they are, `trapezoid 12 ft and 8 ft, 10 ft apart`; where one end is square, add `, square at west`",
        trapezoid,
    ),
    (
        "ring sector",
        "write both radii, the angle and where its middle looks, for example `ring sector 12 ft outside radius, 8 ft inside radius, 90 degrees, toward north`",
        ring_sector,
    ),
    (
        "ring",
        "write both diameters, for example `ring 20 ft outside, 8 ft inside`",
        ring,
    ),
    (
        "sector",
        "write radius, angle and where its middle looks, for example `sector 12 ft radius, 75 degrees, toward north`",
        sector,
    ),
    (
        "half circle",
        "write the diameter and where the flat side is, for example `half circle 12 ft, flat at north`",
        half_circle,
    ),
    (
        "quarter circle",
        "write the radius and the corner with the right angle, for example `quarter circle 6 ft radius, square at southwest`",
        quarter_circle,
    ),
];

impl ShapePhrase {
    /// The shape, when the text begins with the name of one.
    pub(super) fn read(said: Said<'_>) -> Option<Result<Self, Unreadable>> {
        let (name, help, reader) = SHAPES
            .iter()
            .find(|(name, ..)| said.is(name) || said.text().starts_with(&format!("{name} ")))?;
        let said = said.helped(help);
        let parts = said.after(name)?.parts(&[" and ", " with ", ","]);
        Some(reader(&parts).and_then(|shape| match shape.outline() {
            Ok(_) => Ok(shape),
            Err(_) => Err(said.because(format!("`{}` encloses nothing", said.text()))),
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
            Self::RingSector {
                outside,
                inside,
                angle,
                toward,
            } => Outline::ring_sector(outside, inside, angle, toward),
        }
    }
}

fn triangle(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let (lengths, square) = match parts {
        [lengths] => (lengths, None),
        [lengths, square] => (lengths, Some(corner(*square)?)),
        _ => return Err(parts[0].refuse()),
    };
    match (&lengths.parts(&[" by ", "x", "X", "×"])[..], square) {
        ([east_west, north_south], Some(square)) => Ok(ShapePhrase::RightTriangle {
            east_west: east_west.positive()?,
            north_south: north_south.positive()?,
            square,
        }),
        ([first, second, third], None) => {
            three_sides([first.positive()?, second.positive()?, third.positive()?])
        }
        _ => Err(lengths.refuse()),
    }
}

fn three_sides(sides: [Length; 3]) -> Result<ShapePhrase, Unreadable> {
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

fn trapezoid(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let (south, north, apart, square) = match parts {
        [south, north, apart] => (south, north, apart, None),
        [south, north, apart, square] => {
            let end = square.after("square at ").and_then(|end| end.read().ok());
            let end = end.filter(|end| matches!(end, Direction::East | Direction::West));
            (south, north, apart, Some(square.need(end)?))
        }
        _ => return Err(parts[0].refuse()),
    };
    let apart = apart.need(apart.before(" apart"))?;
    Ok(ShapePhrase::Trapezoid {
        south: south.positive()?,
        north: north.positive()?,
        apart: apart.positive()?,
        square,
    })
}

fn ring(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let [outside, inside] = parts else {
        return Err(parts[0].refuse());
    };
    let (outer, inner) = (outside.before(" outside"), inside.before(" inside"));
    let (outer, inner) = outside.need(outer.zip(inner))?;
    let (outside, inside) = (outer.positive()?, inner.positive()?);
    if outside <= inside {
        return Err(Unreadable::new(
            "bad-ring",
            format!("{inside} inside leaves nothing of a ring of {outside}"),
            "both are diameters, the larger one outside; are they the wrong way round?",
        ));
    }
    Ok(ShapePhrase::Ring { outside, inside })
}

fn sector(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let [radius, angle, toward] = parts else {
        return Err(parts[0].refuse());
    };
    let (across, middle) = (radius.before(" radius"), toward.after("toward "));
    let (radius, toward) = radius.need(across.zip(middle))?;
    Ok(ShapePhrase::Sector {
        radius: radius.positive()?,
        angle: angle.read()?,
        toward: toward.read()?,
    })
}

fn ring_sector(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let [outside, inside, angle, toward] = parts else {
        return Err(parts[0].refuse());
    };
    let (outer, inner) = (
        outside.before(" outside radius"),
        inside.before(" inside radius"),
    );
    let (outer, inner) = outside.need(outer.zip(inner))?;
    let toward = toward.need(toward.after("toward "))?;
    let (outside, inside) = (outer.positive()?, inner.positive()?);
    if outside <= inside {
        return Err(Unreadable::new(
            "bad-ring",
            format!("{inside} inside leaves nothing of a ring of {outside}"),
            "both are radii, the larger one outside; are they the wrong way round?",
        ));
    }
    Ok(ShapePhrase::RingSector {
        outside,
        inside,
        angle: angle.read()?,
        toward: toward.read()?,
    })
}

fn half_circle(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let [diameter, flat] = parts else {
        return Err(parts[0].refuse());
    };
    let side = flat.after("flat at ").and_then(|side| side.read().ok());
    let toward = match flat.need(side)? {
        Direction::North => Direction::South,
        Direction::East => Direction::West,
        Direction::South => Direction::North,
        Direction::West => Direction::East,
        Direction::NorthEast
        | Direction::SouthEast
        | Direction::SouthWest
        | Direction::NorthWest => return Err(flat.refuse()),
    };
    Ok(ShapePhrase::Sector {
        radius: diameter.positive()?.half(),
        angle: Angle::HALF,
        toward,
    })
}

fn quarter_circle(parts: &[Said<'_>]) -> Result<ShapePhrase, Unreadable> {
    let [radius, square] = parts else {
        return Err(parts[0].refuse());
    };
    let radius = radius.need(radius.before(" radius"))?;
    let toward = match corner(*square)? {
        Direction::NorthEast => Direction::SouthWest,
        Direction::SouthEast => Direction::NorthWest,
        Direction::NorthWest => Direction::SouthEast,
        _ => Direction::NorthEast,
    };
    Ok(ShapePhrase::Sector {
        radius: radius.positive()?,
        angle: Angle::QUARTER,
        toward,
    })
}

/// `square at southwest`: one of the four corners.
fn corner(said: Said<'_>) -> Result<Direction, Unreadable> {
    let corner = said.after("square at ").and_then(|at| at.read().ok());
    said.need(corner.filter(|corner| {
        matches!(
            corner,
            Direction::NorthEast
                | Direction::SouthEast
                | Direction::SouthWest
                | Direction::NorthWest
        )
    }))
}

#[cfg(test)]
mod tests;
