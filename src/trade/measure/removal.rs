//! What is broken out or dug out: measured in place, before it swells.

use std::sync::Arc;

use super::dig::{self, Ground};
use crate::geometry::Outline;
use crate::input::job::{Breaking, Removal, RemovalMaterial};
use crate::input::phrases::SizePhrase;
use crate::reading::At;
use crate::tables::yard;
use crate::trade::sets::Sets;
use crate::trade::tally::{Listed, Tally};
use crate::trade::term::{number, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

#[derive(Clone, Debug)]
pub struct RemovalQuantities {
    pub material: RemovalMaterial,
    pub breaking: Breaking,
    /// The rate it goes by.
    pub task: &'static str,
    /// Nothing of it is hauled.
    pub stays: bool,
    pub area: Quantity,
    /// Cubic yards in place.
    pub solid: Quantity,
    pub saw_cut: Option<SawCut>,
    pub listed: Arc<[Listed]>,
}

/// A cut through the whole depth.
#[derive(Clone, Debug)]
pub struct SawCut {
    pub length: Quantity,
    /// Square feet the blade goes through.
    pub face: Quantity,
}

pub(super) fn measure(removal: &Removal, ground: Ground<'_>, sets: Sets<'_>) -> RemovalQuantities {
    let tally = &mut Tally::of(&removal.name.value, sets);
    let beside = removal.depth.as_ref();
    // Reading has seen to it that the depth stands in the size or beside it.
    let beside = beside.map(|depth| Quantity::inches("depth", depth));
    let (area, depth, deeper) = if let Some(size) = &removal.size {
        let (area, depth) = area(&removal.name.value, size, beside);
        (area, depth, Vec::new())
    } else {
        let (area, deeper) = dig::under(removal, ground, tally);
        let depth = beside.expect("without a size the depth is asked for on reading");
        (area, depth, deeper)
    };
    let area = tally.settle(area);
    let even = yard::volume(of(&area), &depth);
    let (rule, term) = if deeper.is_empty() {
        ("sq ft × in ÷ 324 = cu yd, in place", even)
    } else {
        let rule = "sq ft × in ÷ 324 = cu yd, and what lies deeper, in place";
        (rule, even + sum(&deeper))
    };
    let solid = tally.by(rule, "in place", Unit::CubicYard, term);
    let saw_cut = removal.saw_cut.as_ref().map(|cut| {
        let written = Quantity::feet(tally.name("saw cut, as written"), cut);
        let length = tally.by("as the takeoff says", "saw cut", Unit::Foot, of(&written));
        let through = of(&length) * &depth / number(12);
        let face = tally.between(
            "length × depth ÷ 12",
            "sawn face",
            Unit::SquareFoot,
            through,
        );
        SawCut { length, face }
    });
    RemovalQuantities {
        material: removal.material,
        breaking: removal.breaking,
        task: removal.task(),
        stays: removal.stays,
        area,
        solid,
        saw_cut,
        listed: tally.done(),
    }
}

/// The area as measured, and the depth.
fn area(removal: &str, size: &At<SizePhrase>, beside: Option<Quantity>) -> (Quantity, Quantity) {
    let name = format!("{removal} area");
    let place = size.place;
    let feet = |what: &'static str, value: Length| Quantity::feet(what, &At { value, place });
    let inches = |value: Length| Quantity::inches("depth", &At { value, place });
    let beside = beside.unwrap_or_else(|| inches(Length::ZERO));
    let rectangle = |name: String, length: Length, width: Length| {
        Quantity::by(
            "length times width",
            name,
            Unit::SquareFoot,
            of(&feet("length", length)) * &feet("width", width),
        )
    };
    match size.value {
        SizePhrase::Block {
            length,
            width,
            depth,
        } => (rectangle(name, length, width), inches(depth)),
        SizePhrase::AreaDeep { square_feet, depth } => {
            (Quantity::given(name, square_feet, place), inches(depth))
        }
        SizePhrase::Rectangle {
            east_west,
            north_south,
        } => (rectangle(name, east_west, north_south), beside),
        SizePhrase::Circle { diameter } => {
            let how = super::area::circle(diameter);
            let round = Amount::new(Outline::circle(diameter).area(), Unit::SquareFoot);
            (
                Quantity::new(name, round, Working::Shape { how, place }),
                beside,
            )
        }
        SizePhrase::Shape(shape) => {
            let outline = shape
                .outline()
                .expect("a shape that encloses nothing is refused on reading");
            (super::area::less_holes(name, size, &outline), beside)
        }
    }
}
