//! Concrete of a slab and its base: volumes before any allowance.

use rust_decimal_macros::dec;

use crate::input::job::{Base, Slab};
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Square feet × inches ÷ 324 is cubic yards: 27 cubic feet to the yard times 12
/// inches to the foot. One division, last, so that whole numbers stay exact.
pub(super) fn volume(slab: &Slab, area: &Quantity) -> Quantity {
    let thickness = Quantity::inches("thickness", &slab.thickness);
    Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{} concrete", slab.key),
        Unit::CubicYard,
        of(area) * &thickness / number(dec!(324)),
    )
}

/// Compacted, under the slab and no wider.
pub(super) fn base(slab: &Slab, base: &Base, area: &Quantity) -> Quantity {
    let depth = Quantity::inches("base depth", &base.depth);
    Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{} base", slab.key),
        Unit::CubicYard,
        of(area) * &depth / number(dec!(324)),
    )
}
