//! Items whose unit decides how they are counted: is it one that can be?
//!
//! What is bought is labelled with the unit of its item, so an item by another unit would be
//! counted in one and paid in the other.

use std::collections::BTreeMap;

use super::{Charges, FiberBy, Role, Rules, ShortCharge};
use crate::input::book::{BoxStock, Item, ItemKey, work_unit};
use crate::reading::{At, Place, Problem, Problems};
use crate::values::Unit;

pub(in crate::input::book) fn check(
    rules: &Rules,
    items: &BTreeMap<ItemKey, Item>,
    problems: &mut Problems,
) {
    for one in counted(rules) {
        let Some(item) = items.get(one.key) else {
            continue;
        };
        let unit = item.selling.unit;
        if one.units.contains(&unit) {
            continue;
        }
        let wanted: Vec<String> = one.units.iter().map(|one| format!("`{one}`")).collect();
        let message = format!(
            "`{}` is priced by the {unit}, which cannot count {}",
            one.key, one.purpose
        );
        problems.push(
            Problem::new("wrong-unit", message)
                .at(one.place)
                .also(item.place, "the item")
                .help(format!(
                    "give the item the unit {}, or name another item",
                    wanted.join(" or ")
                )),
        );
    }
}

/// An item with what it is for, and the units that fit.
struct Counted<'a> {
    key: &'a str,
    place: Place,
    purpose: String,
    units: Vec<Unit>,
}

impl<'a> Counted<'a> {
    fn new(item: &'a At<ItemKey>, purpose: impl Into<String>, units: &[Unit]) -> Self {
        Self {
            key: &item.value,
            place: item.place,
            purpose: purpose.into(),
            units: units.to_vec(),
        }
    }
}

fn counted(rules: &Rules) -> Vec<Counted<'_>> {
    let mut found = hired(rules);
    found.extend(stock(rules));
    found.extend(rules.roles.iter().filter_map(|(role, item)| {
        Some(Counted {
            key: item.value.as_deref()?,
            place: item.place,
            purpose: format!("`{}`", role.name()),
            units: purpose(*role, rules)?.to_vec(),
        })
    }));
    for (question, rule) in &rules.site {
        let Some(item) = &rule.item else { continue };
        let unit = match &rule.each {
            Some(each) => each.value.much.unit,
            None => work_unit(*question),
        };
        let purpose = format!("what `{}` takes", question.name());
        // Once for the job is one of whatever can be one.
        let units = if unit == Unit::Lump { ONE } else { &[unit][..] };
        found.push(Counted::new(item, purpose, units));
    }
    found
}

/// What the plant charges and what is hired.
fn hired(rules: &Rules) -> Vec<Counted<'_>> {
    let mut found = Vec::new();
    if let Some(supply) = &rules.supply {
        let charges = supply.charges.items();
        found.extend(
            charges.map(|item| Counted::new(item, "a charge of the plant", Charges::UNITS)),
        );
    }
    if let Some(pump) = &rules.pump {
        let hours = [Unit::Hour];
        found.push(Counted::new(&pump.item, "the hire of a pump", &hours));
        let once = pump.once.iter();
        found.extend(
            once.map(|(_, item)| Counted::new(item, "what a pump costs once a pour", ONCE)),
        );
        let hose = pump.hose.iter();
        found.extend(hose.map(|hose| Counted::new(&hose.item, "hose", &[Unit::Foot])));
    }
    let buggy = rules.buggy.iter();
    found.extend(buggy.map(|buggy| Counted::new(&buggy.item, "the hire of a buggy", TIME)));
    found
}

/// What becomes part of a slab, and what is hauled away.
fn stock(rules: &Rules) -> Vec<Counted<'_>> {
    const MESH: &[Unit] = &[Unit::Sheet, Unit::Roll, Unit::Piece];
    const DUMPED: &[Unit] = &[Unit::Ton, Unit::Load, Unit::CubicYard];
    let mut found = Vec::new();
    let mixes = rules.mixes.values();
    found.extend(mixes.map(|mix| Counted::new(&mix.item, "ready-mix", &[Unit::CubicYard])));
    let bases = rules.bases.values();
    found.extend(bases.map(|base| {
        let units = [base.delivered.value.much.unit];
        Counted::new(&base.item, "what is `delivered` here", &units)
    }));
    let bars = rules.bars.values();
    found.extend(bars.map(|bar| Counted::new(&bar.item, "bars", &[Unit::Piece])));
    let mesh = rules.mesh.values();
    found.extend(mesh.map(|mesh| Counted::new(&mesh.item, "mesh", MESH)));
    found.extend(rules.fiber.values().map(|fiber| match fiber.by {
        FiberBy::Plant => Counted::new(&fiber.item, "fiber by the plant", &[Unit::CubicYard]),
        FiberBy::Us => Counted::new(&fiber.item, "bags of fiber", &[Unit::Bag, Unit::Piece]),
    }));
    let disposal = rules.disposal.values();
    found.extend(disposal.map(|dump| Counted::new(&dump.item, "what is dumped", DUMPED)));
    let boxes = rules.boxes.values().flat_map(BoxStock::items);
    found.extend(boxes.map(|(key, place)| Counted {
        key,
        place,
        purpose: "boxes, lids and rings".to_owned(),
        units: vec![Unit::Piece],
    }));
    found
}

const ONCE: &[Unit] = &[Unit::Trip, Unit::Bag, Unit::Piece];
const ONE: &[Unit] = &[
    Unit::Lump,
    Unit::Piece,
    Unit::Bag,
    Unit::Roll,
    Unit::Load,
    Unit::Trip,
    Unit::Day,
];
const TIME: &[Unit] = &[Unit::Day, Unit::Hour];

/// The units an item for this purpose may have.
fn purpose(role: Role, rules: &Rules) -> Option<&'static [Unit]> {
    Some(match role {
        Role::Forms | Role::DeepForms | Role::IsolationStrip => &[Unit::Foot],
        Role::Stakes | Role::Chairs => &[Unit::Piece],
        Role::CuringCompound => &[Unit::Gallon],
        Role::VaporRetarder | Role::CuringCover => &[Unit::SquareFoot],
        Role::ShortLoad => match &rules.supply.as_ref()?.short_load {
            Some(short) if short.charge == ShortCharge::Flat => &[Unit::Load],
            Some(_) => &[Unit::CubicYard],
            None => return None,
        },
        Role::Delivery => &[Unit::Load],
        Role::Standing => &[Unit::Minute],
        // Hired by its own rules, it is not counted by this purpose.
        Role::Pump if rules.pump.is_some() => return None,
        Role::Pump => ONCE,
        Role::SawCutting => &[Unit::Foot, Unit::SquareFoot],
        Role::BreakingMachine => TIME,
        Role::Labor => &[Unit::Hour],
        Role::Trip => &[Unit::Trip],
        // `steel::check` tells how wire is priced.
        Role::TieWire => return None,
    })
}
