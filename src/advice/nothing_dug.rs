//! Is the room for a slab and its base dug out by anybody?

use rust_decimal::Decimal;

use super::Case;
use crate::input::job::RemovalMaterial;
use crate::reading::Problem;
use crate::values::{Amount, Unit, rounding};

pub(super) fn ask(case: Case<'_>) -> Vec<Problem> {
    let mut removals = case.takeoff.head.removals.iter();
    if removals.any(|one| one.material == RemovalMaterial::Soil) {
        return Vec::new();
    }
    // A slab upon another lies on no soil.
    let laid = case.slabs().filter(|(slab, _)| slab.on.is_none());
    let with_base = laid.filter_map(|(slab, found)| Some((slab, found.base.as_ref()?, found)));
    let all: Vec<_> = with_base.collect();
    let Some((first, ..)) = all.first() else {
        return Vec::new();
    };
    let yards: Decimal = all
        .iter()
        .map(|(_, base, found)| base.value() + found.concrete.value())
        .sum();
    let message = format!(
        "no soil is dug out, and concrete and base take `{}`",
        Amount::new(rounding::to_places(yards, 1), Unit::CubicYard)
    );
    let problem = Problem::new("nothing-dug", message).at(first.place).help(
        "write what is dug, `remove: [soil: {size: 432 sq ft x 8 in, of: soil}]`; if the ground is ready or lies lower, leave it: the quote says that digging is not included",
    );
    vec![problem]
}
