//! Concrete of a slab and its base: volumes before any allowance.

use rust_decimal_macros::dec;

use super::{StepQuantities, ThickenedQuantities};
use crate::input::business::OrderPolicy;
use crate::input::job::{Base, Slab};
use crate::reading::At;
use crate::trade::sets::Sets;
use crate::trade::term::{number, of, sum};
use crate::trade::working::Quantity;
use crate::values::Unit;

/// Of an even slab as written, else the mean of its two ends: exact for rectangles.
pub(super) fn thickness(slab: &Slab, sets: Sets<'_>) -> Quantity {
    let place = slab.thickness.place;
    let inches = |name: &'static str, value| Quantity::inches(name, &At { value, place });
    let thin = inches("thickness", slab.thickness.value.thin);
    match slab.thickness.value.thick {
        None => thin,
        Some((thick, _)) => sets.settle(Quantity::by(
            "the mean of thin and thick end; exact for rectangles",
            format!("{} mean thickness", slab.key),
            Unit::Inch,
            (of(&thin) + &inches("thick end", thick)) / number(2),
        )),
    }
}

/// Square feet × inches ÷ 324 is cubic yards: 27 cubic feet to the yard times 12
/// inches to the foot. One division, last, so that whole numbers stay exact.
pub(super) fn volume(slab: &Slab, area: &Quantity, thickness: &Quantity) -> Quantity {
    let is_all = slab.sections.thickened.is_none() && slab.sections.steps.is_none();
    let what = if is_all { "concrete" } else { "flat concrete" };
    Quantity::by(
        "sq ft × in ÷ 324 = cu yd: 27 cu ft × 12 in",
        format!("{} {what}", slab.key),
        Unit::CubicYard,
        of(area) * thickness / number(dec!(324)),
    )
}

/// The slab with its thickened edges and its steps; none where there is only the slab.
pub(super) fn whole(
    slab: &Slab,
    flat: &Quantity,
    thickened: Option<&ThickenedQuantities>,
    steps: Option<&StepQuantities>,
) -> Option<Quantity> {
    if thickened.is_none() && steps.is_none() {
        return None;
    }
    let parts = [
        Some(flat),
        thickened.map(|edge| &edge.concrete),
        steps.and_then(|steps| steps.concrete.as_ref()),
    ];
    Some(Quantity::by(
        "slab, thickened edges and steps",
        format!("{} concrete", slab.key),
        Unit::CubicYard,
        sum(parts.into_iter().flatten()),
    ))
}

/// Strips of sheet that lap: area × width ÷ (width − lap).
pub(super) fn retarder(slab: &Slab, policy: &OrderPolicy, area: &Quantity) -> Option<Quantity> {
    slab.sections.retarder.as_ref()?;
    let width = Quantity::feet("sheet width", &policy.retarder_width);
    let lap = Quantity::feet("sheet lap", &policy.retarder_lap);
    Some(Quantity::by(
        "area × width ÷ (width − lap); laps of 6 in at least (IBC 1910.1, from a copy)",
        format!("{} vapor retarder", slab.key),
        Unit::SquareFoot,
        of(area) * &width / (of(&width) - &lap),
    ))
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
