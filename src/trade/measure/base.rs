//! Base where it lies: under the slab, past its forms, and not where a thick edge stands in it.

use super::ThickenedQuantities;
use super::strips::beyond;
use crate::geometry::rim::Strip;
use crate::input::business::OrderPolicy;
use crate::input::job::{EdgeKind, EdgePart, Slab};
use crate::tables::yard;
use crate::trade::tally::Tally;
use crate::trade::term::of;
use crate::trade::working::Quantity;
use crate::values::{Length, Unit};

#[derive(Clone, Debug)]
pub struct BaseQuantities {
    /// What it covers.
    pub area: Quantity,
    pub compacted: Quantity,
}

pub(super) fn measure(
    slab: &Slab,
    area: &Quantity,
    thickened: Option<&ThickenedQuantities>,
    policy: &OrderPolicy,
    tally: &mut Tally<'_>,
) -> Option<BaseQuantities> {
    let depth = Quantity::inches("base depth", &slab.base.as_ref()?.depth);
    let strips = past_forms(slab, runs_under(slab, policy));
    let past = &policy.base_past_forms;
    let area = match beyond(slab, &strips, past, "base past the forms", tally) {
        None => area.clone(),
        Some(past) => tally.by(
            "area, and what lies past the forms",
            "base area",
            Unit::SquareFoot,
            of(area) + &past,
        ),
    };
    let volume = yard::volume(of(&area), &depth);
    let edge = thickened.filter(|_| !runs_under(slab, policy));
    let compacted = match edge {
        None => tally.by(yard::VOLUME, "base", Unit::CubicYard, volume),
        Some(edge) => {
            let whole = tally.between(
                yard::VOLUME,
                "base without thick edges",
                Unit::CubicYard,
                volume,
            );
            let left = of(&whole) - &edge.concrete;
            let left = match &edge.below_base {
                None => left,
                Some(below) => left + below,
            };
            let rule = if policy.base_past_forms.value == Length::ZERO {
                "less the concrete of thickened edges that stands in it"
            } else {
                "less the concrete of thickened edges that stands in it; there it stops, and lies past no form"
            };
            tally.by(rule, "base", Unit::CubicYard, left)
        }
    };
    Some(BaseQuantities { area, compacted })
}

/// Whether it goes down with the edges of this slab and lies below them; walls of a stoop stand on it.
pub(super) fn runs_under(slab: &Slab, policy: &OrderPolicy) -> bool {
    policy.base_under_edges || slab.sections.is_filled()
}

/// Open edges that it runs out past; a thick edge that stands in it stops it.
fn past_forms(slab: &Slab, runs_under: bool) -> Vec<Strip> {
    let parts = slab.edges.iter().filter(|part| part.kind == EdgeKind::Open);
    let parts = parts.filter(|part| runs_under || !slab.is_thickened(part));
    parts.map(strip).collect()
}

/// All of them.
pub(super) fn open_edges(slab: &Slab) -> Vec<Strip> {
    let parts = slab.edges.iter();
    let open = parts.filter(|part| part.kind == EdgeKind::Open);
    open.map(strip).collect()
}

const fn strip(part: &EdgePart) -> Strip {
    Strip {
        side: part.side,
        stretch: part.stretch,
    }
}
