//! Fiber in the mix and stone under the slab.

use std::collections::BTreeMap;

use crate::input::book::FiberBy;
use crate::input::job::Takeoff;
use crate::trade::measure::SlabQuantities;
use crate::trade::order::{ConcreteOrder, List, Section};
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// The plant adds fiber to a whole order; the crew adds whole bags.
pub(super) fn fiber(takeoff: &Takeoff, orders: &[ConcreteOrder], list: &mut List<'_>) {
    for order in orders {
        let members = takeoff.slabs.iter().filter(|slab| order.takes(slab));
        let mut names: Vec<&String> = members
            .filter_map(|slab| slab.fiber.as_ref().map(|fiber| &fiber.value))
            .collect();
        names.sort();
        names.dedup();
        for name in names {
            let Some(stock) = list.ways.rules.fiber.get(name).cloned() else {
                continue;
            };
            let dose = Quantity::given(
                "dose",
                Amount::new(
                    stock.dose.value.much.value / stock.dose.value.per.value,
                    Unit::Pound,
                ),
                stock.dose.place,
            );
            let need = format!("{name} fiber for {}", order.order.name());
            let quantity = match stock.by {
                FiberBy::Plant => Quantity::by(
                    "every ordered yard",
                    &need,
                    Unit::CubicYard,
                    of(&order.order),
                ),
                FiberBy::Us => {
                    let bag = Quantity::given("bag", stock.bag.value, stock.bag.place);
                    Quantity::by(
                        "ordered yards × dose ÷ a bag, up to a whole one",
                        &need,
                        Unit::Bag,
                        (of(&order.order) * &dose / &bag).whole(),
                    )
                }
            };
            list.buy(
                &stock.item,
                &need,
                "by the ordered yard",
                &[(Section::Whole, quantity)],
                Some(order.placement),
            );
        }
    }
}

/// Compacted yards become what is delivered, by the one factor of the book.
pub(super) fn base(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut by_material: BTreeMap<String, Vec<(Section, Quantity)>> = BTreeMap::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let base = slab.base.as_ref().zip(measured.base.as_ref());
        let base = base.map(|(base, compacted)| (&base.material.value, compacted));
        // The fill of a stoop is bought like a base.
        let fill = slab.sections.fill().zip(measured.fill());
        for (material, compacted) in base.into_iter().chain(fill) {
            let Some(stock) = list.ways.rules.bases.get(material) else {
                continue;
            };
            let factor = Quantity::given(
                "delivered for each compacted yard",
                Amount::new(
                    stock.delivered.value.much.value / stock.delivered.value.per.value,
                    stock.delivered.value.much.unit,
                ),
                stock.delivered.place,
            );
            let delivered = Quantity::by(
                "compacted × delivered for each",
                format!("{} {material}", slab.key),
                stock.delivered.value.much.unit,
                of(compacted) * &factor,
            );
            by_material
                .entry(material.clone())
                .or_default()
                .push((Section::Slab(i), delivered));
        }
    }
    for (material, parts) in by_material {
        if let Some(stock) = list.ways.rules.bases.get(&material).cloned() {
            list.buy(
                &stock.item,
                &format!("base, {material}"),
                "compacted yards × what is delivered for each",
                &parts,
                None,
            );
        }
    }
}
