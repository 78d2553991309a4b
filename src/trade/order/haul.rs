//! Where broken concrete and soil go: by the ton, the loose yard or the load, as the dump charges.

use super::{List, Missing, Section};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn list(removals: &[RemovalQuantities], list: &mut List<'_>) {
    for material in RemovalMaterial::ALL {
        let solids: Vec<&Quantity> = removals
            .iter()
            .filter(|one| one.material == material && !one.stays)
            .map(|one| &one.solid)
            .collect();
        if solids.is_empty() {
            continue;
        }
        let Some(dump) = list.by.rules.disposal.get(material.name()) else {
            list.missing.push(Missing::Disposal(material.name()));
            continue;
        };
        let name = format!("{} hauled", material.name());
        let solid = Quantity::by(
            "added up",
            format!("{name}, in place"),
            Unit::CubicYard,
            sum(solids),
        );
        let swell = Quantity::said("loose for each yard in place", &dump.loose);
        let loose = list.sets.settle(Quantity::by(
            "in place × swell",
            format!("{name}, loose"),
            Unit::CubicYard,
            of(&solid) * &swell,
        ));
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
