//! Area of a slab, its concrete, its base: volumes before any allowance.

use rust_decimal_macros::dec;

use crate::input::job::{Base, Slab};
use crate::input::phrases::SizePhrase;
use crate::reading::At;
use crate::trade::term::{number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// Rectangles multiply, circles go by their formula, walked outlines by their corners and curves.
pub(super) fn area(slab: &Slab) -> Quantity {
    let name = format!("{} area", slab.key);
    match &slab.size {
        Some(At {
            value:
                SizePhrase::Rectangle {
                    east_west,
                    north_south,
                },
            place,
        }) => {
            let east_west = Quantity::feet(
                "east-west",
                &At {
                    value: *east_west,
                    place: *place,
                },
            );
            let north_south = Quantity::feet(
                "north-south",
                &At {
                    value: *north_south,
                    place: *place,
                },
            );
            Quantity::by(
                "length times width",
                name,
                Unit::SquareFoot,
                of(&east_west) * &north_south,
            )
        }
        Some(At {
            value: SizePhrase::Circle { diameter },
            place,
        }) => {
            let how = format!("circle of {diameter}: 3.1416 × radius × radius");
            Quantity::new(
                name,
                Amount::new(slab.outline.area(), Unit::SquareFoot),
                Working::Shape { how, place: *place },
            )
        }
        _ => {
            let sides = slab.outline.sides();
            let curved = sides.iter().filter(|side| !side.is_straight()).count();
            let curves = match curved {
                0 => String::new(),
                1 => ", one of them curved".to_owned(),
                n => format!(", {n} of them curved"),
            };
            let how = format!("outline of {} sides{curves}", sides.len());
            Quantity::new(
                name,
                Amount::new(slab.outline.area(), Unit::SquareFoot),
                Working::Shape {
                    how,
                    place: slab.place,
                },
            )
        }
    }
}

/// Square feet × inches ÷ 324 is cubic yards: 27 cubic feet to the yard times 12
/// inches to the foot. One division, last, so that whole numbers stay exact.
pub(super) fn volume(slab: &Slab, area: &Quantity) -> Quantity {
    let thickness = Quantity::inches("thickness", &slab.thickness);
    Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{} concrete", slab.key),
        Unit::CubicYard,
        of(area) * &thickness / number(dec!(324)),
    )
}

/// Compacted, under the slab and no wider.
pub(super) fn base(slab: &Slab, base: &Base, area: &Quantity) -> Quantity {
    let depth = Quantity::inches("base depth", &base.depth);
    Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{} base", slab.key),
        Unit::CubicYard,
        of(area) * &depth / number(dec!(324)),
    )
}
