//! Where broken concrete and soil go: by the ton, the loose yard or the load, as the dump charges.

use super::{List, Missing, Section};
use crate::input::book::{Dumping, Rules};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn list(removals: &[RemovalQuantities], list: &mut List<'_>) {
    for material in RemovalMaterial::ALL {
        let Some(solid) = in_place(material, removals) else {
            continue;
        };
        let Some(dump) = list.by.rules.disposal.get(material.name()) else {
            list.missing.push(Missing::Disposal(material.name()));
            continue;
        };
        let name = format!("{} hauled", material.name());
        let loose = list.sets.settle(loose(material, &solid, dump));
        let quantity = match list.unit(&dump.item).unwrap_or(Unit::Ton) {
            Unit::CubicYard => loose,
            Unit::Load => {
                let load = Quantity::said("load", &dump.load);
                Quantity::by(
                    "loose ÷ a load, up to a whole one",
                    name.clone(),
                    Unit::Load,
                    (of(&loose) / &load).whole(),
                )
            }
            _ => {
                let weight = Quantity::each("weight of a yard in place", Unit::Pound, &dump.weight);
                Quantity::by(
                    "in place × weight ÷ 2,000",
                    name.clone(),
                    Unit::Ton,
                    of(&solid) * &weight / number(2000),
                )
            }
        };
        let parts = [(Section::Removal, quantity)];
        list.buy(&dump.item, name, "as the dump charges", &parts);
    }
}

/// What of a material is taken away, where any is.
fn in_place(material: RemovalMaterial, removals: &[RemovalQuantities]) -> Option<Quantity> {
    let solids: Vec<&Quantity> = removals
        .iter()
        .filter(|one| one.material == material && !one.stays)
        .map(|one| &one.solid)
        .collect();
    let name = format!("{} hauled, in place", material.name());
    (!solids.is_empty()).then(|| Quantity::by("added up", name, Unit::CubicYard, sum(solids)))
}

fn loose(material: RemovalMaterial, solid: &Quantity, dump: &Dumping) -> Quantity {
    let swell = Quantity::said("loose for each yard in place", &dump.loose);
    let name = format!("{} hauled, loose", material.name());
    Quantity::by(
        "in place × swell",
        name,
        Unit::CubicYard,
        of(solid) * &swell,
    )
}

/// Loose yards of all that is dumped for `item`.
pub(super) fn loose_for(
    item: &str,
    removals: &[RemovalQuantities],
    rules: &Rules,
) -> Vec<Quantity> {
    let materials = RemovalMaterial::ALL.into_iter();
    materials
        .filter_map(|material| {
            let dump = rules.disposal.get(material.name())?;
            let solid = in_place(material, removals)?;
            (dump.item.value == item).then(|| loose(material, &solid, dump))
        })
        .collect()
}
