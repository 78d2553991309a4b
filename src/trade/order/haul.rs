//! Where broken concrete and soil go: by the ton, the loose yard or the load, as the dump charges.

use rust_decimal_macros::dec;

use super::{List, Missing, Section};
use crate::input::job::RemovalMaterial;
use crate::trade::measure::RemovalQuantities;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

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
        let Some(dump) = list.ways.rules.disposal.get(material.name()).cloned() else {
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
        let loose_factor = Quantity::given(
            "loose for each yard in place",
            dump.loose.value,
            dump.loose.place,
        );
        let loose = list.sets.settle(Quantity::by(
            "in place × swell",
            format!("{name}, loose"),
            Unit::CubicYard,
            of(&solid) * &loose_factor,
        ));
        let unit = list
            .ways
            .rules
            .selling
            .get(&dump.item.value)
            .map_or(Unit::Ton, |selling| selling.unit);
        let quantity = match unit {
            Unit::CubicYard => loose,
            Unit::Load => {
                let load = Quantity::given("load", dump.load.value, dump.load.place);
                Quantity::by(
                    "loose ÷ a load, up to a whole one",
                    &name,
                    Unit::Load,
                    (of(&loose) / &load).whole(),
                )
            }
            _ => {
                let weight = Quantity::given(
                    "weight of a yard in place",
                    Amount::new(
                        dump.weight.value.much.value / dump.weight.value.per.value,
                        Unit::Pound,
                    ),
                    dump.weight.place,
                );
                Quantity::by(
                    "in place × weight ÷ 2,000",
                    &name,
                    Unit::Ton,
                    of(&solid) * &weight / number(dec!(2000)),
                )
            }
        };
        list.buy(
            &dump.item,
            &name,
            "as the dump charges",
            &[(Section::Removal, quantity)],
            None,
        );
    }
}
