//! What stands around the scope: title, days, assumptions, what is not included.

use rust_decimal::Decimal;

use super::phrases::{list, printed};
use super::{Offering, sections};
use crate::documents::views::quote::Sentence;
use crate::input::job::{RemovalMaterial, Takeoff};
use crate::trade::measure::SlabQuantities;
use crate::values::{Amount, Unit, rounding};

pub(super) fn title(takeoff: &Takeoff) -> String {
    let names = takeoff.slabs.iter().map(|slab| slab.called.clone());
    format!("A new {}", list(&names.collect::<Vec<_>>()))
}

pub(super) fn when(of: Offering<'_>) -> Vec<Sentence> {
    let crew = &of.offer.quoted().needs.crew;
    let later = crew
        .returns
        .as_ref()
        .map_or(Decimal::ZERO, crate::trade::Quantity::value);
    // No work is done in no time.
    let days = crew.at_house.value().max(Decimal::ONE);
    let before = i64::try_from(rounding::round_up_to(days, Decimal::ONE)).unwrap_or(1);
    let start = of.pour.plus(-before).date().max(of.quoted.date());
    let start = crate::values::Day::new(start);
    let end = start.plus(i64::from(of.business.quote.start_window.0));
    let sentence = |before: &str, strong: String, after: &str| Sentence {
        before: before.to_owned(),
        strong,
        after: after.to_owned(),
    };
    let between = format!("{} and {}", start.long(), end.long());
    let working = match Amount::new(days, Unit::Plain).number().as_str() {
        "1" => "1 working day".to_owned(),
        count => format!("{count} working days"),
    };
    vec![
        sentence("Start between ", between, "."),
        sentence(
            "",
            working,
            &at_your_house(later, super::set::late_lids(of)),
        ),
        sentence(super::season::moves(of), String::new(), ""),
    ]
}

/// Visits after the pour are no working days before it, and neither is the one for lids on order.
fn at_your_house(later: Decimal, late_lids: usize) -> String {
    let after = match Amount::new(later, Unit::Plain).number().as_str() {
        "0" => String::new(),
        "1" => ", and one visit after the pour".to_owned(),
        several => format!(", and {several} visits after the pour"),
    };
    let lids = match late_lids {
        0 => "",
        1 => ", and one to set the lid that is on order",
        _ => ", and one to set the lids that are on order",
    };
    format!(" at your house{after}{lids}.")
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
    lines.extend(super::site::assumptions(of));
    lines.iter().map(|line| printed(line)).collect()
}
