//! The quantities of a job, gathered by what they belong to.

use crate::documents::views::office::{Sheet, every, numbered};
use crate::input::job::{Bars, Slab};
use crate::trade::Quantity;
use crate::trade::measure::{BarQuantities, SlabQuantities};
use crate::trade::order::ConcreteOrder;
use crate::values::rounding;

/// Quantities that belong together, and what has to be said beside them.
#[derive(Clone, Debug)]
pub struct Group {
    /// `slab`, `removal`, `order`, `bought`, `work` or `crew`.
    pub part: &'static str,
    pub title: String,
    pub quantities: Vec<Quantity>,
    pub notes: Vec<String>,
}

/// Every quantity of the job as quoted; what is zero is left out.
pub fn groups(sheet: &Sheet<'_>) -> Vec<Group> {
    let needs = &sheet.offer.quoted().needs;
    let slabs = sheet.takeoff.slabs.iter().zip(&needs.slabs);
    let mut groups: Vec<Group> = slabs
        .map(|(slab, found)| of_slab(sheet, slab, found))
        .collect();
    let removed = needs.removals.iter();
    groups.push(Group {
        part: "removal",
        title: "Removal".into(),
        quantities: removed
            .flat_map(|one| [one.area.clone(), one.solid.clone()])
            .collect(),
        notes: Vec::new(),
    });
    groups.extend(needs.orders.iter().map(|order| of_order(sheet, order)));
    groups.push(bought(sheet));
    let tasks = needs.crew.tasks.iter();
    groups.push(Group {
        part: "work",
        title: "Work".into(),
        quantities: tasks
            .flat_map(|task| [task.work.clone(), task.hours.clone()])
            .collect(),
        notes: Vec::new(),
    });
    let crew = &needs.crew;
    groups.push(Group {
        part: "crew",
        title: "Crew".into(),
        quantities: [
            &crew.worked,
            &crew.trips,
            &crew.travel,
            &crew.hours,
            &crew.days,
            &crew.charged,
        ]
        .map(Clone::clone)
        .to_vec(),
        notes: vec!["`labor` is the hours charged.".into()],
    });
    for group in &mut groups {
        group
            .quantities
            .retain(|quantity| !quantity.value().is_zero());
    }
    groups.retain(|group| !group.quantities.is_empty());
    groups
}

fn of_slab(sheet: &Sheet<'_>, slab: &Slab, found: &SlabQuantities) -> Group {
    let mut quantities = vec![found.area.clone()];
    quantities.extend(found.edges.by_kind.iter().map(|(_, edge)| edge.clone()));
    quantities.extend([
        found.edges.straight.clone(),
        found.edges.curved.clone(),
        found.edges.strip.clone(),
        found.concrete.clone(),
    ]);
    quantities.extend(found.base.clone());
    let mut notes = Vec::new();
    if let (Some(bars), Some(found)) = (&slab.bars, &found.bars) {
        quantities.extend([found.placed.clone(), found.weight.clone()]);
        notes.extend(runs(found, bars));
    }
    quantities.extend(found.mesh.clone());
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
    let spacing = bars.spacing.value;
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

/// What the takeoff did not say, and was taken from the kind.
fn usual(sheet: &Sheet<'_>, slab: &Slab) -> Option<String> {
    let values: Vec<String> = slab
        .usual
        .iter()
        .filter_map(|key| {
            let value = match *key {
                "thickness" => slab.thickness.value.to_string(),
                "mix" => slab.mix.value.clone(),
                "finish" => slab.finish.value.clone(),
                "base" => {
                    let base = slab.base.as_ref()?;
                    format!("{} of {}", base.depth.value, base.material.value)
                }
                "bars" => {
                    let bars = slab.bars.as_ref()?;
                    format!("{} at {}", bars.bar, bars.spacing.value)
                }
                "mesh" => slab.mesh.as_ref()?.value.clone(),
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
            "not in the takeoff, so as usual for a {} ({home}): {}",
            slab.kind,
            values.join(", ")
        )
    })
}

fn of_order(sheet: &Sheet<'_>, order: &ConcreteOrder) -> Group {
    let allowance = format!("{} allowance", order.order.name());
    let mut quantities = vec![order.net.clone()];
    quantities.extend(
        every(sheet.offer.quoted())
            .into_iter()
            .find(|one| one.name() == allowance),
    );
    quantities.extend([
        order.order.clone(),
        order.short.clone(),
        order.standing.clone(),
    ]);
    let loads: Vec<String> = order
        .loads
        .iter()
        .map(|yards| rounding::to_places(*yards, 4).normalize().to_string())
        .collect();
    let trucks = if loads.len() == 1 { "load" } else { "loads" };
    Group {
        part: "order",
        title: format!("Concrete: {}", order.order.name()),
        quantities,
        notes: vec![format!(
            "{} {trucks}: {} cu yd",
            loads.len(),
            loads.join(" + ")
        )],
    }
}

/// What is paid for, in the amount that is really bought.
fn bought(sheet: &Sheet<'_>) -> Group {
    let lines = numbered(&sheet.offer.quoted().lines);
    Group {
        part: "bought",
        title: "Bought, hired and charged".into(),
        quantities: lines
            .iter()
            .filter_map(|(_, line)| line.quantity.clone())
            .collect(),
        notes: Vec::new(),
    }
}
