//! Sawing that the book pays for, by the foot or by the square foot of cut face.

use super::{List, Parts, Section};
use crate::input::book::Role;
use crate::trade::measure::RemovalQuantities;
use crate::values::Unit;

pub(super) fn list(removals: &[RemovalQuantities], list: &mut List<'_>) {
    // Without an item the crew saws by its own rate.
    if !list.by.rules.roles.contains_key(&Role::SawCutting) {
        return;
    }
    let Some(item) = list.role(Role::SawCutting) else {
        return;
    };
    let by_face = list.unit(&item) == Some(Unit::SquareFoot);
    let cuts = removals.iter().filter_map(|one| one.saw_cut.as_ref());
    let much = cuts.map(|cut| if by_face { &cut.face } else { &cut.length });
    let parts: Parts = much.map(|much| (Section::Removal, much.clone())).collect();
    list.buy(
        &item,
        "saw cutting",
        "as it is charged: by the foot, or by the square foot of cut face",
        &parts,
    );
}
