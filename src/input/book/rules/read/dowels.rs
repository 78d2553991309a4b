//! Reads a kind of dowel; what cannot be read is reported and left out.

use super::words::{at_least, item};
use crate::input::book::rules::{Adhesive, DowelStock};
use crate::input::book::tables;
use crate::input::phrases::DowelBar;
use crate::reading::{At, Fields, Node, Problem, Problems};
use crate::values::{Amount, Length, Unit};

/// Room around a bonded bar: 1/8 in over it, or less (UFC 3-270-04, before paragraph 4.8).
const OVER_THE_BAR: Length = Length::sixty_fourths(8);

pub(super) fn dowels(node: &Node, problems: &mut Problems) -> Option<DowelStock> {
    let fields = node.fields(&tables::DOWEL, problems).ok()?;
    let item = item(&fields, problems);
    let bar: Option<At<DowelBar>> = fields.need("bar", problems).ok();
    let diameter = bar
        .as_ref()
        .map_or(Length::ZERO, |bar| bar.value.diameter());
    let depth: Option<At<Length>> = fields.need("depth", problems).ok();
    let least = depth.as_ref().map_or(Length::ZERO, |depth| depth.value);
    let length = fields.need("length", problems).ok().and_then(|at| {
        let why = "a dowel is longer than its hole is deep";
        at_least(at, least, why, problems)
    });
    let hole = match fields.node("hole") {
        Some(_) => fields
            .read("hole", problems)
            .and_then(|at| at_least(at, diameter, "a hole is wider than its bar", problems)),
        None => bar.as_ref().map(|bar| At {
            value: diameter + OVER_THE_BAR,
            place: bar.place,
        }),
    };
    let why = "dowels stand some way apart";
    let spacing = fields
        .need("spacing", problems)
        .ok()
        .and_then(|at: At<Length>| at_least(at, Length::sixty_fourths(1), why, problems));
    let from_ends = fields.need("from ends", problems).ok();
    let cap = named(&fields, "cap", problems);
    let bonded = if let Some(said) = fields.yes("bonded", problems) {
        said.value
    } else {
        // Who names an adhesive for a smooth bar sets its one end in it.
        let named = named(&fields, "adhesive", &mut Problems::default());
        named.is_some() || bar.as_ref().is_some_and(|bar| !bar.value.is_smooth())
    };
    let adhesive = if bonded {
        Some(adhesive(&fields, problems)?)
    } else {
        None
    };
    Some(DowelStock {
        item: item?,
        bar: bar?,
        length: length?,
        depth: depth?,
        hole: hole?,
        spacing: spacing?,
        from_ends: from_ends?,
        cap,
        adhesive,
    })
}

fn adhesive(fields: &Fields<'_>, problems: &mut Problems) -> Option<Adhesive> {
    fields.required("adhesive", problems).ok()?;
    let item = named(fields, "adhesive", problems);
    let cartridge: Option<At<Amount>> = fields.need("cartridge", problems).ok();
    let cartridge = cartridge.and_then(|at| {
        let at = crate::input::checks::in_unit(at, Unit::Milliliter, "cartridge", problems).ok()?;
        if at.value.value.is_zero() {
            let problem = Problem::new("not-above-zero", "a cartridge holds more than nothing");
            problems.push(
                problem
                    .at(at.place)
                    .help("write what it holds, for example `300 ml`"),
            );
            return None;
        }
        Some(at)
    });
    let loss = fields.need("loss", problems).ok();
    Some(Adhesive {
        item,
        cartridge: cartridge?,
        loss: loss?,
    })
}

/// An item, or `none` where it is not charged.
fn named(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<String>> {
    fields
        .read::<String>(key, problems)
        .filter(|at| at.value != "none")
}
