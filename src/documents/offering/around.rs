//! What stands around the scope: title, days, assumptions, what is not included.

use rust_decimal::Decimal;

use super::phrases::{length, list, printed};
use super::{Offering, english};
use crate::documents::views::quote::Sentence;
use crate::input::job::{Method, Takeoff};
use crate::values::{Amount, Unit, rounding};

pub(super) fn title(takeoff: &Takeoff) -> String {
    let names: Vec<String> = takeoff
        .slabs
        .iter()
        .map(|slab| slab.called.clone())
        .collect();
    format!("A new {}", list(&names))
}

pub(super) fn when(of: Offering<'_>) -> Vec<Sentence> {
    let crew = &of.offer.quoted().needs.crew;
    let days = crew.trips.value();
    let before = i64::try_from(rounding::round_up_to(days, Decimal::ONE))
        .unwrap_or(1)
        .max(1);
    let start = of.pour.plus(-before).date().max(of.quoted.date());
    let start = crate::values::Day::new(start);
    let end = start.plus(i64::from(of.business.quote.start_window.0));
    let sentence = |before: &str, strong: String, after: &str| Sentence {
        before: before.to_owned(),
        strong,
        after: after.to_owned(),
    };
    let count = Amount::new(days, Unit::Plain).number();
    let working = if count == "1" {
        "1 working day".to_owned()
    } else {
        format!("{count} working days")
    };
    vec![
        sentence(
            "Start between ",
            format!("{} and {}", start.long(), end.long()),
            ".",
        ),
        sentence("", working, " at your house."),
        sentence(english::RAIN, String::new(), ""),
    ]
}

pub(super) fn not_included(of: Offering<'_>) -> Vec<String> {
    let takeoff = of.takeoff;
    let mut lines: Vec<String> = Vec::new();
    if takeoff.removals.is_empty() {
        lines.push("Taking out old concrete or soil".to_owned());
    }
    lines.extend(of.business.not_included.iter().cloned());
    lines.extend(takeoff.not_included.iter().cloned());
    if takeoff
        .slabs
        .iter()
        .all(|slab| slab.bars.is_none() && slab.mesh.is_none())
    {
        lines.push("Steel in the concrete".to_owned());
    }
    lines.push("Grass seed and plants".to_owned());
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
    lines.extend(of.takeoff.assumptions.iter().cloned());
    let access = &of.takeoff.access;
    match access.by.value {
        Method::Chute => lines.push("The mixer can reach the work with its chute".to_owned()),
        Method::Wheelbarrow | Method::Buggy | Method::Pump => {
            let distance = access
                .distance
                .as_ref()
                .map(|distance| format!(" of {}", length(distance.value)));
            let gate = access
                .gate
                .as_ref()
                .map(|gate| format!(", {}\u{a0}in wide", gate.value.in_inches().number()));
            if distance.is_some() || gate.is_some() {
                lines.push(format!(
                    "A firm path{}{} from the truck to the work",
                    distance.unwrap_or_default(),
                    gate.unwrap_or_default()
                ));
            }
        }
    }
    lines.iter().map(|line| printed(line)).collect()
}
