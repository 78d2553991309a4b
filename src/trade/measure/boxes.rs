//! Boxes in a slab: the hole each makes, the concrete it displaces, the strip around it.

use super::Measuring;
use crate::geometry::Outline;
use crate::input::job::Slab;
use crate::input::phrases::OpeningPhrase;
use crate::reading::{At, Place};
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::{Term, number, of};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Length, Unit};

/// What one box takes of its slab.
#[derive(Clone, Debug)]
pub struct BoxQuantities {
    pub opening: Quantity,
    /// Concrete that is not where the box is; always shown.
    pub displaced: Quantity,
    /// The soft strip around it.
    pub strip: Option<Quantity>,
    /// Whether the displaced concrete is taken off the slab.
    pub is_deducted: bool,
}

pub(super) fn measure(
    slab: &Slab,
    thickness: &Quantity,
    with: Measuring<'_>,
    tally: &Tally<'_>,
) -> Vec<BoxQuantities> {
    let known = slab.boxes.iter().filter_map(|set| {
        let stock = with.rules.boxes.get(&set.stock.value)?;
        let settled = |what: &str, make: &dyn Fn(String) -> Quantity| {
            let name = tally.name(&format!("{} {what}", set.name.value));
            tally.sets.settle(make(name))
        };
        let opening = settled("opening", &|name| area(name, &stock.opening));
        let displaced = settled("displaced", &|name| {
            let volume = yard::volume(of(&opening), thickness);
            Quantity::by(yard::VOLUME, name, Unit::CubicYard, volume)
        });
        let strip = set
            .isolated
            .then(|| settled("strip", &|name| around(name, &stock.opening)));
        Some(BoxQuantities {
            is_deducted: with.policy.smallest_opening.value.value <= opening.value(),
            opening,
            displaced,
            strip,
        })
    });
    known.collect()
}

/// Every box, after what it takes of the concrete.
pub(super) fn list(boxes: &[BoxQuantities], tally: &mut Tally<'_>) {
    for one in boxes {
        tally.list([&one.opening, &one.displaced]);
        tally.list(&one.strip);
    }
}

fn feet(name: &'static str, value: Length, place: Place) -> Term {
    of(&Quantity::feet(name, &At { value, place }))
}

fn area(name: String, opening: &At<OpeningPhrase>) -> Quantity {
    let place = opening.place;
    match opening.value {
        OpeningPhrase::Rectangle(east_west, north_south) => Quantity::by(
            "length times width",
            name,
            Unit::SquareFoot,
            feet("east-west", east_west, place) * feet("north-south", north_south, place),
        ),
        OpeningPhrase::Round(diameter) => Quantity::new(
            name,
            Amount::new(Outline::circle(diameter).area(), Unit::SquareFoot),
            Working::Shape {
                how: super::area::circle(diameter),
                place,
            },
        ),
    }
}

fn around(name: String, opening: &At<OpeningPhrase>) -> Quantity {
    let place = opening.place;
    match opening.value {
        OpeningPhrase::Rectangle(east_west, north_south) => Quantity::by(
            "both ways, twice",
            name,
            Unit::Foot,
            (feet("east-west", east_west, place) + feet("north-south", north_south, place))
                * number(2),
        ),
        OpeningPhrase::Round(diameter) => Quantity::new(
            name,
            Amount::new(Outline::circle(diameter).perimeter(), Unit::Foot),
            Working::Shape {
                how: format!("around a circle of {diameter}: 3.1416 × diameter"),
                place,
            },
        ),
    }
}
