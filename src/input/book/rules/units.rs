//! Items whose unit decides how they are counted: is it one that can be?

use std::collections::BTreeMap;

use super::{Charges, Role, Rules};
use crate::input::book::{Item, ItemKey};
use crate::reading::{At, Problem, Problems};
use crate::values::Unit;

pub(in crate::input::book) fn check(
    rules: &Rules,
    items: &BTreeMap<ItemKey, Item>,
    problems: &mut Problems,
) {
    for (name, purpose, units) in counted(rules) {
        let Some(item) = items.get(&name.value) else {
            continue;
        };
        let unit = item.selling.unit;
        if units.contains(&unit) {
            continue;
        }
        let wanted: Vec<String> = units.iter().map(|one| format!("`{one}`")).collect();
        let message = format!(
            "`{}` is priced by the {unit}, which cannot count {purpose}",
            name.value
        );
        problems.push(
            Problem::new("wrong-unit", message)
                .at(name.place)
                .also(item.place, "the item")
                .help(format!(
                    "give the item the unit {}, or name another item",
                    wanted.join(" or ")
                )),
        );
    }
}

/// Items with what they are for, and the units that fit.
fn counted(rules: &Rules) -> Vec<(&At<ItemKey>, &'static str, &'static [Unit])> {
    const ONCE: &[Unit] = &[Unit::Trip, Unit::Bag, Unit::Piece];
    const TIME: &[Unit] = &[Unit::Day, Unit::Hour];
    let mut found: Vec<(&At<ItemKey>, &'static str, &'static [Unit])> = Vec::new();
    if let Some(supply) = &rules.supply {
        let charges = supply.charges.items();
        found.extend(charges.map(|item| (item, "a charge of the plant", Charges::UNITS)));
    }
    if let Some(pump) = &rules.pump {
        found.push((&pump.item, "the hire of a pump", &[Unit::Hour]));
        let once = pump.once.iter();
        found.extend(once.map(|(_, item)| (item, "what a pump costs once a pour", ONCE)));
        let hose = pump.hose.iter();
        found.extend(hose.map(|hose| (&hose.item, "hose", &[Unit::Foot][..])));
    }
    let buggy = rules.buggy.iter();
    found.extend(buggy.map(|buggy| (&buggy.item, "the hire of a buggy", TIME)));
    found
}

/// Purposes whose item may be counted in more ways than one.
pub(in crate::input::book) fn check_purposes(
    rules: &Rules,
    items: &BTreeMap<ItemKey, Item>,
    problems: &mut Problems,
) {
    for (role, units) in [
        (Role::SawCutting, [Unit::Foot, Unit::SquareFoot]),
        (Role::BreakingMachine, [Unit::Day, Unit::Hour]),
    ] {
        let Some(At {
            value: Some(key),
            place,
        }) = rules.roles.get(&role)
        else {
            continue;
        };
        let Some(item) = items.get(key) else { continue };
        if !units.contains(&item.selling.unit) {
            let message = format!(
                "`{key}` is priced by the {}, which cannot count `{}`",
                item.selling.unit,
                role.key()
            );
            problems.push(
                Problem::new("wrong-unit", message)
                    .at(*place)
                    .also(item.place, "the item")
                    .help(format!(
                        "give the item the unit `{}` or `{}`",
                        units[0], units[1]
                    )),
            );
        }
    }
}
