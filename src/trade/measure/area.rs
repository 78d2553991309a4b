//! Area of a slab, less what is left open in it.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::geometry::Outline;
use crate::input::business::OrderPolicy;
use crate::input::job::Slab;
use crate::input::phrases::{ShapePhrase, SizePhrase};
use crate::reading::{At, Place};
use crate::trade::sets::Sets;
use crate::trade::term::{largest, number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// What is left open in a slab.
#[derive(Clone, Debug)]
pub struct OpeningQuantities {
    pub area: Quantity,
    /// Smaller ones are formed all the same, but the slab is measured as if they were not there.
    pub is_taken_off: bool,
}

/// The openings of a slab, in the order of its holes; the middle of a ring is taken off however small.
pub(super) fn openings(
    slab: &Slab,
    policy: &OrderPolicy,
    sets: Sets<'_>,
) -> Vec<OpeningQuantities> {
    let openings = slab.openings.iter().zip(slab.outline.holes());
    openings
        .map(|(opening, hole)| {
            let name = format!("{} {} area", slab.key, opening.name.value);
            let area = of_shape(&name, opening.size.as_ref(), hole, opening.name.place);
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
pub(super) fn of_slab(slab: &Slab, openings: &[OpeningQuantities], sets: Sets<'_>) -> Quantity {
    let name = format!("{} area", slab.key);
    let taken_off: Vec<&Quantity> = openings
        .iter()
        .filter(|opening| opening.is_taken_off)
        .map(|opening| &opening.area)
        .collect();
    let whole = |name: &str| of_shape(name, slab.size.as_ref(), &slab.outline, slab.place);
    if taken_off.is_empty() {
        return whole(&name);
    }
    let whole = sets.settle(whole(&format!("{} outline area", slab.key)));
    let mut left = taken_off
        .into_iter()
        .fold(of(&whole), |left, opening| left - opening);
    // Only an owner's own figures can leave less than nothing.
    if left.value() < Decimal::ZERO {
        left = largest(vec![left, number(0)]);
    }
    Quantity::by(
        "outline less what is left open",
        name,
        Unit::SquareFoot,
        left,
    )
}

/// A shape by itself; a ring without its middle.
pub(super) fn less_holes(name: &str, size: &At<SizePhrase>, outline: &Outline) -> Quantity {
    let whole = of_shape(name, Some(size), outline, size.place);
    let Some(hole) = outline.holes().first() else {
        return whole;
    };
    let middle = Quantity::new(
        format!("{name}, middle"),
        Amount::new(hole.area(), Unit::SquareFoot),
        Working::Shape {
            how: "what is open in the middle".to_owned(),
            place: size.place,
        },
    );
    let whole = of_shape(&format!("{name}, whole"), Some(size), outline, size.place);
    Quantity::by(
        "outline less what is left open",
        name,
        Unit::SquareFoot,
        of(&whole) - &middle,
    )
}

/// A shape with a formula by its formula, any other by its corners and curves; openings are not taken off.
fn of_shape(
    name: &str,
    size: Option<&At<SizePhrase>>,
    outline: &Outline,
    place: Place,
) -> Quantity {
    let said = |how: String, place: Place| {
        Quantity::new(
            name,
            Amount::new(outline.area(), Unit::SquareFoot),
            Working::Shape { how, place },
        )
    };
    let Some(size) = size else {
        return said(walked(outline), place);
    };
    let feet = |what: &str, value: Length| {
        let place = size.place;
        Quantity::feet(what, &At { value, place })
    };
    let by = |rule, term| Quantity::by(rule, name, Unit::SquareFoot, term);
    match size.value {
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => by(
            "length times width",
            of(&feet("east-west", east_west)) * &feet("north-south", north_south),
        ),
        SizePhrase::Circle { diameter } => said(
            format!("circle of {diameter}: 3.1416 × radius × radius"),
            size.place,
        ),
        SizePhrase::Shape(shape) => match shape {
            ShapePhrase::RightTriangle {
                east_west,
                north_south,
                ..
            } => by(
                "half of base times height",
                of(&feet("east-west", east_west)) * &feet("north-south", north_south)
                    / number(dec!(2)),
            ),
            ShapePhrase::Trapezoid {
                south,
                north,
                apart,
                ..
            } => by(
                "middle of both sides times their distance",
                (of(&feet("south side", south)) + &feet("north side", north))
                    * &feet("apart", apart)
                    / number(dec!(2)),
            ),
            ShapePhrase::Triangle { sides: [a, b, c] } => {
                let how = format!("triangle of {a}, {b} and {c}, by its corners");
                said(how, size.place)
            }
            ShapePhrase::Ring { outside, .. } => said(
                format!("circle of {outside}: 3.1416 × radius × radius"),
                size.place,
            ),
            ShapePhrase::Sector { radius, angle, .. } => said(
                format!(
                    "sector of {radius} radius, {angle}: 3.1416 × radius × radius × degrees ÷ 360"
                ),
                size.place,
            ),
        },
        SizePhrase::Block { .. } | SizePhrase::AreaDeep { .. } => said(walked(outline), size.place),
    }
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
