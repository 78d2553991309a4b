//! What is said of one slab beside its quantities.

use super::sections;
use crate::documents::views::office::Sheet;
use crate::input::job::{Bars, Dowels, Slab};
use crate::input::phrases::{Done, JointMethod, SteelAtJoints};
use crate::tables::joints::{EARLY_WINDOW, LATE_WINDOW};
use crate::trade::measure::{BarQuantities, JointQuantities, SlabQuantities};
use crate::values::Length;

pub(super) fn title(sheet: &Sheet<'_>, slab: &Slab) -> String {
    match sheet.takeoff.placements.len() {
        1 => slab.key.clone(),
        _ => format!("{}, pour {}", slab.key, slab.placement + 1),
    }
}

/// Its bars, panels and usual values in words.
pub(super) fn notes(sheet: &Sheet<'_>, slab: &Slab, found: &SlabQuantities) -> Vec<String> {
    let sizes = slab.bars.iter();
    let bars = sizes.flat_map(|bars| found.bars.iter().flat_map(|found| runs(found, bars)));
    let mut notes: Vec<String> = bars.collect();
    notes.extend(found.corner_bars.as_ref().map(across));
    notes.extend(found.bent_bars.as_ref().map(bent));
    notes.extend(found.joints.as_ref().and_then(panels));
    notes.extend(found.joints.as_ref().and_then(|joints| made(slab, joints)));
    notes.extend(at_joints(sheet, slab, found));
    notes.extend(shot(slab));
    notes.extend(met(slab));
    notes.extend(too_small(sheet, slab, found));
    notes.extend(usual(sheet, slab));
    notes
}

fn panels(joints: &JointQuantities) -> Option<String> {
    let (long, short) = joints.largest()?;
    Some(match joints.layout.panels.len() {
        1 => format!("one panel of {long} x {short}"),
        many => format!("{many} panels, the largest {long} x {short}"),
    })
}

/// How deep its joints are made, and when they are sawn.
fn made(slab: &Slab, joints: &JointQuantities) -> Option<String> {
    if joints.layout.lines.is_empty() {
        return None;
    }
    let deep = format!("{} deep", slab.groove());
    Some(match slab.joint_method() {
        JointMethod::Tooled => format!("joints tooled {deep}"),
        JointMethod::SawnLate => format!("joints sawn {deep}, {LATE_WINDOW}"),
        JointMethod::SawnEarly => {
            format!("joints sawn {deep} by an early-entry saw, {EARLY_WINDOW}")
        }
    })
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

/// What its levels come to: the fall each way, the low corner, and what lies off their plane.
fn shot(slab: &Slab) -> Option<String> {
    let levels = slab.levels.as_ref()?;
    let falls = slab.falls.iter().filter_map(|fall| {
        let side = fall.to.side()?;
        Some(format!("{} per ft {}", fall.rise.value, side.name()))
    });
    let falls: Vec<String> = falls.collect();
    let fall = if falls.is_empty() {
        "level".to_owned()
    } else {
        format!("falls {}", falls.join(" and "))
    };
    let off = levels
        .farthest_off()
        .map_or_else(String::new, |(name, off)| {
            let way = if off < Length::ZERO { "below" } else { "above" };
            format!(", {name} {} {way} its plane", off.abs())
        });
    let s = if levels.lowest().len() == 1 { "" } else { "s" };
    Some(format!(
        "by its levels: {fall}; low corner{s} {}{off}",
        levels.lowest().join(" and ")
    ))
}

/// What lies higher or lower where it meets the slab; a ramp with its length at 1 in 12.
fn met(slab: &Slab) -> Option<String> {
    let met = slab.around.meets.iter().map(|(name, height)| {
        let above = height.value.above;
        let long = above.abs() * 12;
        let done = match height.value.done() {
            Done::Flush => "flush".to_owned(),
            Done::Trim => "the edge trimmed".to_owned(),
            Done::Step => "a step".to_owned(),
            Done::Ramp => format!("a ramp, {long} long at 1:12"),
        };
        let way = if above < Length::ZERO {
            "below"
        } else {
            "above"
        };
        match above {
            Length::ZERO => format!("{} {done}", name.value),
            _ => format!("{} {} {way}, {done}", name.value, above.abs()),
        }
    });
    let met: Vec<String> = met.collect();
    (!met.is_empty()).then(|| format!("meets {}", met.join("; ")))
}

/// What becomes of its steel at its joints, where that is not to run through.
fn at_joints(sheet: &Sheet<'_>, slab: &Slab, found: &SlabQuantities) -> Option<String> {
    found
        .joints
        .as_ref()
        .filter(|joints| !joints.layout.lines.is_empty())?;
    let which = match slab.steel_at_joints {
        SteelAtJoints::Through => return None,
        SteelAtJoints::EveryOther => "every other",
        SteelAtJoints::Cut => "every",
    };
    let short = sheet.business.order.cover.value;
    slab.bars
        .as_ref()
        .map(|_| format!("{which} bar that meets a joint ends {short} short of it"))
}

/// The bars across its inside corners.
fn across(found: &BarQuantities) -> String {
    let runs = found.runs.iter();
    let runs: Vec<String> = runs
        .map(|run| format!("{} of {}", run.count, run.length))
        .collect();
    format!("{} across inside corners: {}", found.bar, runs.join(", "))
}

/// The bars around the corners of its thick edges.
fn bent(found: &BarQuantities) -> String {
    let runs = found.runs.iter();
    let runs = runs.map(|run| format!("{} of {}, two legs of {}", run.count, run.length, run.lap));
    let runs: Vec<String> = runs.collect();
    format!(
        "{} bent around the corners of thick edges: {}",
        found.bar,
        runs.join(", ")
    )
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
                "allowance" => {
                    let (own, goes) = (slab.allowance.as_ref()?, sheet.takeoff.allowance_of(slab)?);
                    std::ptr::eq(own, goes).then(|| own.value.to_string())?
                }
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
                "sawn" if slab.is_sawn() => {
                    format!("{} deep", slab.groove())
                }
                "carries" => slab.carries().name().to_owned(),
                "inside" => if slab.is_inside() { "yes" } else { "no" }.to_owned(),
                "fall" => format!("{} per ft", slab.falls.first()?.rise.value),
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
