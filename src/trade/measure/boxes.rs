//! Boxes in a slab: the hole each makes, the concrete it displaces, the strip around it.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::geometry::Outline;
use crate::input::book::{BoxStock, Rules};
use crate::input::business::OrderPolicy;
use crate::input::job::{SetBox, Slab};
use crate::input::phrases::Opening;
use crate::reading::{At, Place};
use crate::trade::sets::Sets;
use crate::trade::term::{number, of, sum};
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

impl BoxQuantities {
    /// In the order they are shown.
    pub fn all(&self) -> Vec<Quantity> {
        let mut all = vec![self.opening.clone(), self.displaced.clone()];
        all.extend(self.strip.clone());
        all
    }
}

pub(super) fn measure(
    slab: &Slab,
    thickness: &Quantity,
    (policy, rules): (&OrderPolicy, &Rules),
    sets: Sets<'_>,
) -> Vec<BoxQuantities> {
    let known = slab.boxes.iter().filter_map(|one| {
        let stock = rules.boxes.get(&one.stock.value)?;
        let limit = policy.smallest_opening.value.value;
        Some(self::one(slab, one, (stock, limit), thickness, sets))
    });
    known.collect()
}

/// The concrete of the slab, less the boxes large enough to count.
pub(super) fn less(slab: &Slab, whole: Quantity, boxes: &[BoxQuantities]) -> Quantity {
    let deducted: Vec<&Quantity> = boxes
        .iter()
        .filter(|one| one.is_deducted)
        .map(|one| &one.displaced)
        .collect();
    if deducted.is_empty() {
        return whole;
    }
    let name = whole.name().to_owned();
    let before = Quantity::new(
        format!("{} concrete without boxes", slab.key),
        whole.amount(),
        whole.working().clone(),
    );
    Quantity::by(
        "less what the boxes displace that are no smaller than your smallest opening",
        name,
        Unit::CubicYard,
        of(&before) - sum(deducted),
    )
}

fn one(
    slab: &Slab,
    set: &SetBox,
    (stock, limit): (&BoxStock, Decimal),
    thickness: &Quantity,
    sets: Sets<'_>,
) -> BoxQuantities {
    let name = format!("{} {}", slab.key, set.name.value);
    let opening = sets.settle(area(format!("{name} opening"), &stock.opening));
    let displaced = sets.settle(Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{name} displaced"),
        Unit::CubicYard,
        of(&opening) * thickness / number(dec!(324)),
    ));
    let strip = set
        .isolated
        .then(|| sets.settle(around(format!("{name} strip"), &stock.opening)));
    BoxQuantities {
        is_deducted: limit <= opening.value(),
        opening,
        displaced,
        strip,
    }
}

fn feet(name: &str, value: Length, place: Place) -> Quantity {
    Quantity::feet(name, &At { value, place })
}

fn area(name: String, opening: &At<Opening>) -> Quantity {
    let place = opening.place;
    match opening.value {
        Opening::Rectangle(east_west, north_south) => Quantity::by(
            "length times width",
            name,
            Unit::SquareFoot,
            of(&feet("east-west", east_west, place)) * &feet("north-south", north_south, place),
        ),
        Opening::Round(diameter) => Quantity::new(
            name,
            Amount::new(Outline::circle(diameter).area(), Unit::SquareFoot),
            Working::Shape {
                how: format!("circle of {diameter}: 3.1416 × radius × radius"),
                place,
            },
        ),
    }
}

fn around(name: String, opening: &At<Opening>) -> Quantity {
    let place = opening.place;
    match opening.value {
        Opening::Rectangle(east_west, north_south) => Quantity::by(
            "both ways, twice",
            name,
            Unit::Foot,
            (of(&feet("east-west", east_west, place)) + &feet("north-south", north_south, place))
                * number(2),
        ),
        Opening::Round(diameter) => Quantity::new(
            name,
            Amount::new(Outline::circle(diameter).perimeter(), Unit::Foot),
            Working::Shape {
                how: format!("around a circle of {diameter}: 3.1416 × diameter"),
                place,
            },
        ),
    }
}
