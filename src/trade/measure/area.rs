//! Area of a slab, less what is left open in it.

use rust_decimal::Decimal;

use crate::geometry::Outline;
use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::input::phrases::{ShapePhrase, SizePhrase};
use crate::reading::{At, Place};
use crate::trade::sets::Sets;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, largest, number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

const LESS_OPENINGS: &str = "outline less what is left open";

/// What is left open in a slab.
#[derive(Clone, Debug)]
pub struct OpeningQuantities {
    pub area: Quantity,
    /// Smaller ones are formed all the same, but the slab is measured as if they were not there.
    pub is_taken_off: bool,
}

/// The area of a slab, and its openings in the order of its holes.
pub(super) fn measure(
    slab: &Slab,
    policy: &OrderPolicy,
    tally: &mut Tally<'_>,
) -> (Quantity, Vec<OpeningQuantities>) {
    let openings = openings(slab, policy, tally.sets);
    let area = of_slab(slab, &openings, tally);
    let area = tally.settle(area);
    tally.list(openings.iter().map(|opening| &opening.area));
    (area, openings)
}

/// The middle of a ring is taken off however small.
fn openings(slab: &Slab, policy: &OrderPolicy, sets: Sets<'_>) -> Vec<OpeningQuantities> {
    let openings = slab.openings.iter().zip(slab.outline.holes());
    openings
        .map(|(opening, hole)| {
            let name = format!("{} {} area", slab.key, opening.name.value);
            let area = of_shape(name, opening.size.as_ref(), hole, opening.name.place);
            let area = sets.settle(area);
            OpeningQuantities {
                is_taken_off: opening.of_ring
                    || policy.smallest_opening.value.value <= area.value(),
                area,
            }
        })
        .collect()
}

/// The outline's area, less the openings that are large enough to be taken off.
fn of_slab(slab: &Slab, openings: &[OpeningQuantities], tally: &Tally<'_>) -> Quantity {
    let taken_off = openings.iter().filter(|opening| opening.is_taken_off);
    let mut taken_off = taken_off.map(|opening| &opening.area).peekable();
    let whole = |title| {
        let (size, outline) = (slab.size.as_ref(), &slab.outline);
        of_shape(tally.name(title), size, outline, slab.place)
    };
    if taken_off.peek().is_none() {
        return whole("area");
    }
    let whole = tally.sets.settle(whole("outline area"));
    let mut left = taken_off.fold(of(&whole), |left, opening| left - opening);
    // Only an owner's own figures can leave less than nothing.
    if left.value() < Decimal::ZERO {
        left = largest(vec![left, number(0)]);
    }
    Quantity::by(LESS_OPENINGS, tally.name("area"), Unit::SquareFoot, left)
}

/// A rectangle so many times as long as it is wide is a strip (common practice, no source).
const STRIP: i64 = 4;

/// How long a path or a strip is, which is priced by the foot.
pub(super) fn length(slab: &Slab) -> Option<Quantity> {
    let name = || format!("{} length", slab.key);
    if let Some(width) = &slab.width {
        let area = of_shape(
            format!("{} whole area", slab.key),
            None,
            &slab.outline,
            slab.place,
        );
        let long = of(&area) / &Quantity::feet("width", width);
        let rule = "area ÷ width, as along the middle";
        return Some(Quantity::by(rule, name(), Unit::Foot, long));
    }
    let size = slab.size.as_ref()?;
    let SizePhrase::Rectangle {
        east_west,
        north_south,
    } = size.value
    else {
        return None;
    };
    let (long, wide) = (east_west.max(north_south), east_west.min(north_south));
    let is_strip = wide.as_nanometres() * STRIP <= long.as_nanometres();
    is_strip.then(|| Quantity::feet(name(), &At::new(long, size.place)))
}

/// A shape by itself; a ring without its middle.
pub(super) fn less_holes(name: String, size: &At<SizePhrase>, outline: &Outline) -> Quantity {
    let Some(hole) = outline.holes().first() else {
        return of_shape(name, Some(size), outline, size.place);
    };
    let middle = Quantity::new(
        format!("{name}, middle"),
        Amount::new(hole.area(), Unit::SquareFoot),
        Working::Shape {
            how: "what is open in the middle".to_owned(),
            place: size.place,
        },
    );
    let whole = of_shape(format!("{name}, whole"), Some(size), outline, size.place);
    Quantity::by(LESS_OPENINGS, name, Unit::SquareFoot, of(&whole) - &middle)
}

/// A shape with a formula by its formula, any other by its corners and curves; openings are not taken off.
fn of_shape(
    name: String,
    size: Option<&At<SizePhrase>>,
    outline: &Outline,
    place: Place,
) -> Quantity {
    let place = size.map_or(place, |size| size.place);
    match formula(size, outline) {
        Ok((rule, term)) => Quantity::by(rule, name, Unit::SquareFoot, term),
        Err(how) if size.is_some() => {
            let area = Amount::new(outline.area(), Unit::SquareFoot);
            Quantity::new(name, area, Working::Shape { how, place })
        }
        Err(how) => cornered(name, how, outline, place),
    }
}

/// From corner to corner, and what each curve adds or takes.
fn cornered(name: String, how: String, outline: &Outline, place: Place) -> Quantity {
    let shape = |name: String, area, how| {
        let area = Amount::new(area, Unit::SquareFoot);
        Quantity::new(name, area, Working::Shape { how, place })
    };
    let curved = outline.sides().iter().filter(|side| !side.is_straight());
    let curves: Vec<Quantity> = curved
        .map(|side| {
            let named = format!("{name}, curve of side {}", side.leg + 1);
            shape(
                named,
                side.bow(),
                "between the curve and its chord".to_owned(),
            )
        })
        .collect();
    if curves.is_empty() {
        return shape(name, outline.area(), how);
    }
    let corners = shape(
        format!("{name}, corner to corner"),
        outline.corner_area(),
        how,
    );
    let term = curves.iter().fold(of(&corners), |area, curve| area + curve);
    let rule = "corner to corner, and what curves add or take";
    Quantity::by(rule, name, Unit::SquareFoot, term)
}

/// The rule and formula of a shape that has one; else how it is measured, in words.
fn formula(
    size: Option<&At<SizePhrase>>,
    outline: &Outline,
) -> Result<(&'static str, Term), String> {
    let Some(&At { value, place }) = size else {
        return Err(walked(outline));
    };
    let feet = |what, value: Length| of(&Quantity::feet(what, &At { value, place }));
    match value {
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => Ok((
            "length times width",
            feet("east-west", east_west) * feet("north-south", north_south),
        )),
        SizePhrase::Circle { diameter } => Err(circle(diameter)),
        SizePhrase::Shape(shape) => match shape {
            ShapePhrase::RightTriangle {
                east_west,
                north_south,
                ..
            } => Ok((
                "half of base times height",
                feet("east-west", east_west) * feet("north-south", north_south) / number(2),
            )),
            ShapePhrase::Trapezoid {
                south,
                north,
                apart,
                ..
            } => Ok((
                "middle of both sides times their distance",
                (feet("south side", south) + feet("north side", north)) * feet("apart", apart)
                    / number(2),
            )),
            ShapePhrase::Triangle { sides: [a, b, c] } => {
                Err(format!("triangle of {a}, {b} and {c}, by its corners"))
            }
            ShapePhrase::Ring { outside, .. } => Err(circle(outside)),
            ShapePhrase::RingSector {
                outside,
                inside,
                angle,
                ..
            } => Err(format!(
                "part of a ring, {outside} and {inside} radius, {angle}: 3.1416 × (radius × radius outside − inside) × degrees ÷ 360"
            )),
            ShapePhrase::Sector { radius, angle, .. } => Err(format!(
                "sector of {radius} radius, {angle}: 3.1416 × radius × radius × degrees ÷ 360"
            )),
        },
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => Err(walked(outline)),
    }
}

/// How the area of a circle is shown.
pub(super) fn circle(diameter: Length) -> String {
    format!("circle of {diameter}: 3.1416 × radius × radius")
}

fn walked(outline: &Outline) -> String {
    let sides = outline.sides();
    let curved = sides.iter().filter(|side| !side.is_straight()).count();
    let curves = match curved {
        0 => String::new(),
        1 => ", one of them curved".to_owned(),
        n => format!(", {n} of them curved"),
    };
    let closing = match outline.closing_error().distance().to_the_eighth() {
        Length::ZERO => String::new(),
        error => format!("; {error} of closing error spread over them"),
    };
    format!("outline of {} sides{curves}{closing}", sides.len())
}
