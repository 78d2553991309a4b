//! What a rule of the owner's may go by: quantities that a job can have, and their units.

use crate::input::book::roles::{Among, Role};
use crate::values::Unit;

/// A quantity by the name a rule calls it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Known {
    pub name: &'static str,
    pub unit: Unit,
    pub among: Among,
}

const fn of(among: Among, name: &'static str, unit: Unit) -> Known {
    Known { name, unit, among }
}

/// Those that are not of a purpose.
const OF_THE_JOB: &[Known] = &[
    of(Among::Slabs, "area", Unit::SquareFoot),
    of(Among::Slabs, "border", Unit::SquareFoot),
    of(Among::Slabs, "concrete", Unit::CubicYard),
    of(Among::Slabs, "flat concrete", Unit::CubicYard),
    of(Among::Slabs, "thickened concrete", Unit::CubicYard),
    of(Among::Slabs, "step concrete", Unit::CubicYard),
    of(Among::Slabs, "base", Unit::CubicYard),
    of(Among::Slabs, "fill", Unit::CubicYard),
    of(Among::Slabs, "open edge", Unit::Foot),
    of(Among::Slabs, "house edge", Unit::Foot),
    of(Among::Slabs, "existing concrete edge", Unit::Foot),
    of(Among::Slabs, "curb edge", Unit::Foot),
    of(Among::Slabs, "isolated edge", Unit::Foot),
    of(Among::Slabs, "joined edge", Unit::Foot),
    of(Among::Slabs, "bulkhead edge", Unit::Foot),
    of(Among::Slabs, "thickened edge", Unit::Foot),
    of(Among::Slabs, "straight form", Unit::Foot),
    of(Among::Slabs, "curved form", Unit::Foot),
    of(Among::Slabs, "deep form", Unit::Foot),
    of(Among::Slabs, "step-down", Unit::Foot),
    of(Among::Slabs, "joints", Unit::Foot),
    of(Among::Slabs, "tooled joints", Unit::Foot),
    of(Among::Slabs, "sawn joints", Unit::Foot),
    of(Among::Slabs, "joints sawn early", Unit::Foot),
    of(Among::Slabs, "sawn joint face", Unit::SquareFoot),
    of(Among::Slabs, "panels", Unit::Piece),
    of(Among::Slabs, "construction joints", Unit::Foot),
    of(Among::Slabs, "keyed joints", Unit::Foot),
    of(Among::Slabs, "bars", Unit::Foot),
    of(Among::Slabs, "bar weight", Unit::Pound),
    of(Among::Slabs, "edge bars", Unit::Foot),
    of(Among::Slabs, "dowels", Unit::Piece),
    of(Among::Slabs, "ties", Unit::Piece),
    of(Among::Slabs, "risers", Unit::Piece),
    of(Among::Slabs, "riser form", Unit::Foot),
    of(Among::Slabs, "step sides", Unit::Foot),
    of(Among::Removals, "removed area", Unit::SquareFoot),
    of(Among::Removals, "removed volume", Unit::CubicYard),
    of(Among::Removals, "saw cut", Unit::Foot),
    of(Among::Removals, "sawn face", Unit::SquareFoot),
    of(Among::Orders, "ordered concrete", Unit::CubicYard),
    of(Among::Orders, "loads", Unit::Load),
    of(Among::Crew, "trips", Unit::Trip),
    of(Among::Crew, "crew days", Unit::Day),
    of(Among::Crew, "hours worked", Unit::Hour),
];

/// Every one of them, in the order of the guide.
pub fn all_known() -> impl Iterator<Item = Known> {
    let purposes = Role::ALL.into_iter().map(Role::purpose);
    let of_slabs = purposes.filter(|purpose| purpose.of == Among::Slabs);
    let of_purposes = of_slabs.map(|one| of(Among::Purposes, one.role.name(), one.units[0]));
    of_purposes.chain(OF_THE_JOB.iter().copied())
}

/// The quantity of this name.
pub fn known(name: &str) -> Option<Known> {
    all_known().find(|known| known.name == name)
}
