//! What stands around the scope: title, assumptions, what is not included.

use super::phrases::{list, printed};
use super::{Offering, sections};
use crate::input::job::{RemovalMaterial, Takeoff};
use crate::trade::measure::SlabQuantities;

pub(super) fn title(takeoff: &Takeoff) -> String {
    let names = takeoff.slabs.iter().map(|slab| slab.called.clone());
    format!("A new {}", list(&names.collect::<Vec<_>>()))
}

pub(super) fn not_included(of: Offering<'_>) -> Vec<String> {
    let takeoff = of.takeoff;
    let mut lines: Vec<String> = Vec::new();
    if takeoff.head.removals.is_empty() {
        lines.push("Taking out old concrete or soil".to_owned());
    } else if takeoff
        .head
        .removals
        .iter()
        .all(|one| one.material != RemovalMaterial::Soil)
    {
        lines.push("Digging out soil".to_owned());
    }
    let usual = of.business.not_included.clone();
    lines.extend(super::removal::without_permit(takeoff, usual));
    lines.extend(takeoff.head.not_included.iter().cloned());
    lines.extend(super::surface::not_sealed(of, &lines));
    let slabs = &of.offer.quoted().needs.slabs;
    let has_steel = |slab: &SlabQuantities| slab.steel().next().is_some() || slab.mesh.is_some();
    if !slabs.iter().any(has_steel) {
        lines.push("Steel in the concrete".to_owned());
    }
    lines.extend(sections::not_included(takeoff));
    lines.extend(super::excluded::questions(of));
    lines.push("Grass seed and plants".to_owned());
    lines.extend(super::set::not_included(of));
    lines.extend(super::site::not_included(of));
    let alone = takeoff.head.left_alone.iter();
    lines.extend(alone.map(|what| format!("Left as it is: {what}")));
    let mut lines: Vec<String> = lines.iter().map(|line| printed(line)).collect();
    if !takeoff.options.is_empty() {
        lines.push("What you may choose on page\u{a0}{page:choices}".to_owned());
    }
    lines
}

/// A title up to its first comma.
pub(in crate::documents) fn short(title: &str) -> String {
    title.split(',').next().unwrap_or(title).trim().to_owned()
}

pub(super) fn assumptions(of: Offering<'_>) -> Vec<String> {
    let mut lines = of.business.assumptions.clone();
    lines.extend(of.takeoff.head.assumptions.iter().cloned());
    lines.extend(sections::assumptions(of.takeoff));
    lines.extend(super::access::sentences(of));
    if super::season::may_be_frozen(of) {
        lines.push("Ground that is not frozen".to_owned());
    }
    lines.extend(super::site::assumptions(of));
    lines.iter().map(|line| printed(line)).collect()
}
