//! Sawing that the book pays for, by the foot or by the square foot of cut face.

use super::{List, Section};
use crate::input::book::Role;
use crate::trade::measure::RemovalQuantities;
use crate::trade::working::Quantity;
use crate::values::Unit;

pub(super) fn list(removals: &[RemovalQuantities], list: &mut List<'_>) {
    // Without an item the crew saws by its own rate.
    if !list.ways.rules.roles.contains_key(&Role::SawCutting) {
        return;
    }
    let cuts = removals.iter().filter_map(|one| one.saw_cut.as_ref());
    let Some(item) = list.role(Role::SawCutting) else {
        return;
    };
    let unit = list.ways.rules.selling.get(&item.value).map(|one| one.unit);
    let parts: Vec<(Section, Quantity)> = cuts
        .map(|cut| {
            let much = if unit == Some(Unit::SquareFoot) {
                &cut.face
            } else {
                &cut.length
            };
            (Section::Removal, much.clone())
        })
        .collect();
    list.buy(
        &item,
        "saw cutting",
        "as it is charged: by the foot, or by the square foot of cut face",
        &parts,
        None,
    );
}
