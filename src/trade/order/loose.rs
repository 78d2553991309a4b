//! Fiber in the mix and stone under the slab.

use std::collections::BTreeMap;

use crate::input::book::{FiberBy, Rules};
use crate::input::job::Takeoff;
use crate::trade::measure::SlabQuantities;
use crate::trade::order::{ConcreteOrder, List, Parts, Section, whole};
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::Unit;

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
            let Some(stock) = list.by.rules.fiber.get(name) else {
                continue;
            };
            let need = format!("{name} fiber for {}", order.order.name());
            let (rule, unit, term) = match stock.by {
                FiberBy::Plant => ("every ordered yard", Unit::CubicYard, of(&order.order)),
                FiberBy::Us => {
                    let dose = Quantity::each("dose", Unit::Pound, &stock.dose);
                    let bag = Quantity::said("bag", &stock.bag);
                    let bags = of(&order.order) * &dose / &bag;
                    let rule = "ordered yards × dose ÷ a bag, up to a whole one";
                    (rule, Unit::Bag, bags.whole())
                }
            };
            let much = whole(Quantity::by(rule, need.clone(), unit, term));
            if let Some(need) = list.buy(&stock.item, need, "by the ordered yard", &much) {
                need.placement = Some(order.placement);
            }
        }
    }
}

/// What is delivered of each material for each slab: compacted yards by the one factor of the book.
pub(in crate::trade) fn delivered<'a>(
    takeoff: &'a Takeoff,
    slabs: &[SlabQuantities],
    rules: &Rules,
) -> BTreeMap<&'a String, Parts> {
    let mut by_material: BTreeMap<&String, Parts> = BTreeMap::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let steps = slab.sections.steps.as_ref().zip(measured.steps.as_ref());
        let steps = steps.and_then(|(steps, found)| steps.base.as_ref().zip(found.base.as_ref()));
        let base = slab.base.as_ref().zip(measured.base.as_ref());
        let base = base.into_iter().chain(steps);
        let base = base.map(|(base, found)| (&base.material.value, &found.compacted));
        // The fill of a stoop is bought like a base.
        let fill = slab.sections.fill().zip(measured.fill());
        for (material, compacted) in base.chain(fill) {
            let Some(stock) = rules.bases.get(material) else {
                continue;
            };
            let unit = stock.delivered.value.much.unit;
            let factor =
                Quantity::each("delivered for each compacted yard", unit, &stock.delivered);
            let delivered = Quantity::by(
                "compacted × delivered for each",
                format!("{} {material}", slab.key),
                unit,
                of(compacted) * &factor,
            );
            let parts = by_material.entry(material).or_default();
            parts.push((Section::Slab(i), delivered));
        }
    }
    by_material
}

pub(super) fn base(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    for (material, parts) in delivered(takeoff, slabs, list.by.rules) {
        if let Some(stock) = list.by.rules.bases.get(material) {
            let rule = "compacted yards × what is delivered for each";
            list.buy(&stock.item, format!("base, {material}"), rule, &parts);
        }
    }
}
