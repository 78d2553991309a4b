//! The quantities of one slab.

use super::{Group, sections};
use crate::documents::views::office::Sheet;
use crate::input::job::{Bars, Dowels, Slab};
use crate::trade::Quantity;
use crate::trade::measure::{BarQuantities, BoxQuantities, SlabQuantities};
use crate::values::Unit;

/// One slab: its quantities, and its bars, panels and usual values in words.
pub(super) fn of_slab(sheet: &Sheet<'_>, slab: &Slab, found: &SlabQuantities) -> Group {
    let mut quantities = vec![found.area.clone()];
    quantities.extend(found.openings.iter().map(|opening| opening.area.clone()));
    quantities.extend(found.edges.by_kind.iter().map(|(_, edge)| edge.clone()));
    quantities.extend([
        found.edges.straight.clone(),
        found.edges.curved.clone(),
        found.edges.deep.clone(),
        found.edges.strip.clone(),
    ]);
    quantities.extend(found.sections());
    quantities.push(found.concrete.clone());
    quantities.extend(found.base.clone());
    let mut notes = Vec::new();
    for found in found.steel() {
        for lap in laps(&found.placed) {
            if !quantities.iter().any(|known| known.name() == lap.name()) {
                quantities.push(lap);
            }
        }
    }
    for found in &found.bars {
        quantities.extend([found.placed.clone(), found.weight.clone()]);
        notes.extend(slab.bars.iter().flat_map(|bars| runs(found, bars)));
    }
    if let Some(edge) = found.thickened.as_ref().and_then(|edge| edge.bars.as_ref()) {
        quantities.extend([edge.placed.clone(), edge.weight.clone()]);
    }
    if let Some(mesh) = &found.mesh {
        quantities.extend(strips(mesh));
        quantities.push(mesh.clone());
    }
    for dowels in &found.dowels {
        quantities.extend([dowels.count.clone(), dowels.holes.clone()]);
        quantities.extend(dowels.adhesive.clone());
    }
    quantities.extend(found.boxes.iter().flat_map(BoxQuantities::all));
    if let Some(border) = &found.border {
        quantities.extend([border.area.clone(), border.inside.clone()]);
    }
    if let Some(joints) = &found.joints {
        quantities.push(joints.length.clone());
        let (columns, rows) = (joints.panels.columns.len(), joints.panels.rows.len());
        let count = |number: usize, one: &str| {
            format!("{number} {one}{}", if number == 1 { "" } else { "s" })
        };
        let (long, wide) = joints.panels.widest;
        notes.push(format!(
            "panels: {} x {}, largest {long} x {wide}",
            count(columns, "column"),
            count(rows, "row"),
        ));
    }
    notes.extend(too_small(sheet, slab, found));
    notes.extend(usual(sheet, slab));
    let pour = match sheet.takeoff.placements.len() {
        1 => String::new(),
        _ => format!(", pour {}", slab.placement + 1),
    };
    Group {
        part: "slab",
        title: format!("{}{pour}", slab.key),
        quantities,
        notes,
    }
}

/// Openings that are formed, but taken off nothing.
fn too_small(sheet: &Sheet<'_>, slab: &Slab, found: &SlabQuantities) -> Option<String> {
    let openings = slab.openings.iter().zip(&found.openings);
    let names: Vec<&str> = openings
        .filter(|(_, found)| !found.is_taken_off)
        .map(|(opening, _)| opening.name.value.as_str())
        .collect();
    let limit = sheet.business.order.smallest_opening.value;
    (!names.is_empty()).then(|| {
        format!(
            "formed, but under {limit}, so not taken off the area: {}",
            names.join(", ")
        )
    })
}

/// The bars to cut, those spliced of equally many sticks together.
fn runs(found: &BarQuantities, bars: &Bars) -> Vec<String> {
    let mut by_sticks: Vec<(u32, Vec<String>)> = Vec::new();
    for run in &found.runs {
        let text = format!("{} of {}", run.count, run.length);
        match by_sticks
            .iter_mut()
            .find(|(sticks, _)| *sticks == run.pieces)
        {
            Some((_, runs)) => runs.push(text),
            None => by_sticks.push((run.pieces, vec![text])),
        }
    }
    let mut spacings: Vec<String> = bars
        .layers()
        .filter(|layer| layer.bar == found.bar)
        .map(|layer| layer.spacing.value.to_string())
        .collect();
    spacings.dedup();
    let spacing = spacings.join(" and ");
    by_sticks
        .into_iter()
        .map(|(sticks, runs)| {
            let spliced = match sticks {
                1 => String::new(),
                _ => format!(", each spliced of {sticks} sticks"),
            };
            format!("{} at {spacing}{spliced}: {}", found.bar, runs.join(", "))
        })
        .collect()
}

/// How far bars lap, where any does, after what that is made of.
fn laps(placed: &Quantity) -> Vec<Quantity> {
    let is_lap = |part: &Quantity| {
        let name = part.name();
        name.ends_with("development length") || name.ends_with("lap length")
    };
    let found = placed.parts().into_iter().flat_map(|part| {
        let mut found = laps(&part);
        found.extend(is_lap(&part).then_some(part));
        found
    });
    found.collect()
}

/// The counts that mesh is made of, where it lies in strips.
fn strips(mesh: &Quantity) -> Vec<Quantity> {
    let counts = |part: &Quantity| part.amount().unit == Unit::Plain;
    mesh.parts().into_iter().filter(counts).collect()
}

fn pinned(dowels: &Dowels) -> String {
    format!("{} at {}", dowels.kind.value, dowels.spacing.value)
}

/// What the takeoff did not say, and was taken from the kind.
fn usual(sheet: &Sheet<'_>, slab: &Slab) -> Option<String> {
    let values: Vec<String> = slab
        .usual
        .iter()
        .filter_map(|key| {
            let value = match *key {
                "thickness" => sections::thickness(slab),
                "thickened" => sections::thickened(slab)?,
                "vapor retarder" => slab.sections.retarder.as_ref().map(|_| "yes".into())?,
                "mix" => slab.mix.value.clone(),
                "finish" => slab.finish.value.clone(),
                "border" => {
                    let border = slab.border.as_ref()?;
                    format!("{} of {}", border.width.value, border.finish.value)
                }
                "color" => slab.color.as_ref()?.value.clone(),
                "seal" => slab.seal.as_ref()?.value.clone(),
                "base" => {
                    let base = slab.base.as_ref()?;
                    format!("{} of {}", base.depth.value, base.material.value)
                }
                "bars" => slab.bars.as_ref()?.to_string(),
                "mesh" => slab.mesh.as_ref()?.value.clone(),
                "dowels" => pinned(slab.dowels.as_ref()?),
                "ties" => pinned(slab.ties.as_ref()?),
                "fiber" => slab.fiber.as_ref()?.value.clone(),
                "joints" => slab.joints.as_ref()?.value.to_string(),
                "fall" => format!("{} per ft", slab.fall.as_ref()?.rise.value),
                _ => return None,
            };
            Some(format!("{key} {value}"))
        })
        .collect();
    let home = sheet.sources.name(sheet.business.place.file);
    (!values.is_empty()).then(|| {
        format!(
            "not in the takeoff, so as for every {} ({home}): {}",
            slab.kind,
            values.join(", ")
        )
    })
}
