//! What is broken out or dug out: measured in place, before it swells.

use rust_decimal_macros::dec;

use crate::input::job::{Removal, RemovalMaterial};
use crate::input::phrases::SizePhrase;
use crate::reading::At;
use crate::trade::sets::Sets;
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Length, Unit};

#[derive(Clone, Debug)]
pub struct RemovalQuantities {
    pub material: RemovalMaterial,
    pub area: Quantity,
    /// Cubic yards in place.
    pub solid: Quantity,
}

pub(super) fn measure(removal: &Removal, sets: Sets<'_>) -> RemovalQuantities {
    let name = &removal.name.value;
    let place = removal.size.place;
    let feet = |what: &str, value: Length| Quantity::feet(what, &At { value, place });
    let inches = |value: Length| Quantity::inches("depth", &At { value, place });
    let (area, depth) = match removal.size.value {
        SizePhrase::Block {
            length,
            width,
            depth,
        } => {
            let term = of(&feet("length", length)) * &feet("width", width);
            (
                Quantity::by(
                    "length times width",
                    format!("{name} area"),
                    Unit::SquareFoot,
                    term,
                ),
                inches(depth),
            )
        }
        SizePhrase::AreaDeep { square_feet, depth } => (
            Quantity::given(format!("{name} area"), square_feet, place),
            inches(depth),
        ),
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => {
            let term = of(&feet("length", east_west)) * &feet("width", north_south);
            (
                Quantity::by(
                    "length times width",
                    format!("{name} area"),
                    Unit::SquareFoot,
                    term,
                ),
                inches(Length::ZERO),
            )
        }
        SizePhrase::Circle { .. } | SizePhrase::Shape(_) => (
            Quantity::by("", format!("{name} area"), Unit::SquareFoot, number(0)),
            inches(Length::ZERO),
        ),
    };
    let area = sets.settle(area);
    let solid = Quantity::by(
        "sq ft × in ÷ 324 = cu yd, in place",
        format!("{name} in place"),
        Unit::CubicYard,
        of(&area) * &depth / number(dec!(324)),
    );
    RemovalQuantities {
        material: removal.material,
        area,
        solid: sets.settle(solid),
    }
}
