//! Every item the rules name, what for, and the units that can count it so.
//!
//! What is bought is labelled with the unit of its item, so an item by another unit would be
//! counted in one and paid in the other.

use std::collections::BTreeMap;

use super::boxes::BoxStock;
use super::dowels::DowelStock;
use super::item::{Item, ItemKey};
use super::roles::Role;
use super::rules::Rules;
use super::site::work_unit;
use super::stock::FiberBy;
use super::supply::ShortCharge;
use crate::reading::{At, Place, Problem, Problems};
use crate::values::{Amount, Unit};

/// An item with what it is for.
pub(super) struct Use<'a> {
    pub key: &'a str,
    pub place: Place,
    purpose: String,
    /// Those that fit; none where its own check tells.
    units: Vec<Unit>,
}

impl<'a> Use<'a> {
    fn new(item: &'a At<ItemKey>, purpose: impl Into<String>, units: &[Unit]) -> Self {
        Self {
            key: &item.value,
            place: item.place,
            purpose: purpose.into(),
            units: units.to_vec(),
        }
    }
}

/// Reports items by a unit that cannot count what they are for.
pub(super) fn check(rules: &Rules, items: &BTreeMap<ItemKey, Item>, problems: &mut Problems) {
    for one in uses(rules) {
        let Some(item) = items.get(one.key) else {
            continue;
        };
        let (key, unit) = (one.key, item.unit);
        if one.units.is_empty() || one.units.contains(&unit) {
            continue;
        }
        let wanted: Vec<String> = one.units.iter().map(|one| format!("`{one}`")).collect();
        let (purpose, units) = (one.purpose, one.units);
        let message = format!("`{key}` is priced by the {unit}, which cannot count {purpose}");
        let problem = Problem::new("wrong-unit", message).at(one.place);
        let (wanted, one) = (wanted.join(" or "), Amount::new(1.into(), unit));
        let is_same_kind = units.iter().any(|other| one.to(*other).is_some());
        let help = if is_same_kind {
            format!("write it in {unit} here, or give the item the unit {wanted}")
        } else {
            format!("give the item the unit {wanted}, or name another item")
        };
        problems.push(problem.also(item.place, "the item").help(help));
    }
}

pub(super) fn uses(rules: &Rules) -> Vec<Use<'_>> {
    const MESH: &[Unit] = &[Unit::Sheet, Unit::Roll, Unit::Piece];
    const DUMPED: &[Unit] = &[Unit::Ton, Unit::Load, Unit::CubicYard];
    let mut found = hired(rules);
    let mut uses = |item, purpose: &str, units: &[Unit]| found.push(Use::new(item, purpose, units));
    for mix in rules.mixes.values() {
        match mix.makes {
            Some(_) => uses(&mix.item, "concrete by the bag", &[Unit::Bag]),
            None => uses(&mix.item, "ready-mix", &[Unit::CubicYard]),
        }
    }
    for base in rules.bases.values() {
        let units = [base.delivered.value.much.unit];
        uses(&base.item, "what is `delivered` here", &units);
    }
    for bar in rules.bars.values() {
        uses(&bar.item, "bars", &[Unit::Piece, Unit::Foot, Unit::Pound]);
    }
    for mesh in rules.mesh.values() {
        uses(&mesh.item, "mesh", MESH);
    }
    for fiber in rules.fiber.values() {
        match fiber.by {
            FiberBy::Plant => uses(&fiber.item, "fiber by the plant", &[Unit::CubicYard]),
            FiberBy::Us => uses(&fiber.item, "bags of fiber", &[Unit::Bag, Unit::Piece]),
        }
    }
    for dump in rules.disposal.values() {
        uses(&dump.item, "what is dumped", DUMPED);
    }
    for item in rules.boxes.values().flat_map(BoxStock::items) {
        uses(item, "boxes, lids and rings", &[Unit::Piece]);
    }
    for item in rules.dowels.values().flat_map(DowelStock::items) {
        uses(item, "dowels", ANY);
    }
    for (item, _) in rules.on_surfaces() {
        uses(item, "surfaces", ANY);
    }
    for (role, item) in &rules.roles {
        if let Some(key) = &item.value {
            found.push(Use {
                key,
                place: item.place,
                purpose: format!("`{}`", role.name()),
                units: units_of(*role, rules).to_vec(),
            });
        }
    }
    for (key, height) in rules.selling.chairs() {
        found.push(Use {
            key,
            place: height.place,
            purpose: "chairs, which have a `height`".to_owned(),
            units: vec![Unit::Piece],
        });
    }
    for rule in rules.also.values() {
        if let Some(item) = &rule.buy {
            // Its own check tells which units fit.
            found.push(Use::new(item, "a rule of `also`", ANY));
        }
    }
    for (question, rule) in &rules.site {
        let Some(item) = &rule.item else { continue };
        let unit = match &rule.each {
            Some(each) => each.value.much.unit,
            None => work_unit(*question),
        };
        let purpose = format!("what `{}` takes", question.name());
        // Once for the job is one of whatever can be one.
        let units = if unit == Unit::Lump { ONE } else { &[unit][..] };
        found.push(Use::new(item, purpose, units));
    }
    found
}

/// What the plant charges and what is hired.
fn hired(rules: &Rules) -> Vec<Use<'_>> {
    const CHARGED: &[Unit] = &[Unit::Load, Unit::CubicYard, Unit::Trip];
    let mut found = Vec::new();
    let mut uses = |item, purpose: &str, units: &[Unit]| found.push(Use::new(item, purpose, units));
    for item in rules
        .supply
        .iter()
        .flat_map(|supply| supply.charges.items())
    {
        uses(item, "a charge of the plant", CHARGED);
    }
    if let Some(pump) = &rules.pump {
        uses(&pump.item, "the hire of a pump", &[Unit::Hour]);
        for (_, item) in pump.once() {
            uses(item, "what a pump costs once a pour", ONCE);
        }
        if let Some(hose) = &pump.hose {
            uses(&hose.item, "hose", &[Unit::Foot]);
        }
    }
    if let Some(buggy) = &rules.buggy {
        uses(&buggy.item, "the hire of a buggy", TIME);
    }
    found
}

const ANY: &[Unit] = &[];
const ONCE: &[Unit] = &[Unit::Trip, Unit::Bag, Unit::Piece];
pub(super) const ONE: &[Unit] = &[
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
fn units_of(role: Role, rules: &Rules) -> &'static [Unit] {
    let short = rules
        .supply
        .as_ref()
        .and_then(|one| one.short_load.as_ref());
    match (role, short.map(|short| short.charge)) {
        // `checks.rs` tells how wire is priced.
        (Role::ShortLoad, None) | (Role::TieWire, _) => ANY,
        (Role::ShortLoad, Some(ShortCharge::Flat)) => &[Unit::Load],
        (Role::ShortLoad, Some(ShortCharge::EachYard)) => &[Unit::CubicYard],
        // Hired by its own rules, it is not counted by this purpose.
        (Role::Pump, _) if rules.pump.is_some() => ANY,
        _ => role.purpose().units,
    }
}
