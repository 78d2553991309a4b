//! The rules that are built in at work: what slabs and removal have of what each purpose goes by.
//!
//! `src/input/book/roles.rs` holds the rules; here is how much there is of what they go by. Rules
//! of the owner's may replace them, or go by the same.

use std::collections::BTreeMap;

use super::also::left_to_buy;
use super::chairs::chair;
use super::{List, Parts, Policies, Section, whole};
use crate::input::book::{Among, Curing, ItemKey, Purpose, Role};
use crate::input::job::{Slab, Takeoff};
use crate::reading::At;
use crate::trade::curing::season;
use crate::trade::measure::{RemovalQuantities, SlabQuantities, works};
use crate::trade::term::{Term, number, of, sum};
use crate::trade::working::Quantity;
use crate::values::{Amount, Day, Length, Unit};

/// What purposes take that slabs have something of.
pub(super) fn of_slabs(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    for purpose in built_in(Among::Slabs, list) {
        let by = list.by;
        let role = purpose.role;
        let parts = list.memo.each(role.name(), takeoff, slabs, |slab, found| {
            of_slab(role, slab, found, by)
        });
        let is_form = matches!(role, Role::Forms | Role::DeepForms);
        let by_face = list.sold_by(role) == Some(Unit::SquareFoot);
        if is_form && (by_face || list.by.rules.also.keys().next().is_some()) {
            list.purposes
                .push((role.name(), faces(role, &parts, slabs, list)));
        }
        if is_form && by_face {
            list.purposes.push((role.name(), parts.clone()));
            let left = left_to_buy(role.name(), parts, &list.replaced);
            let left = faces(role, &left, slabs, list);
            list.buy_role(role, purpose.called, purpose.by, &left);
        } else if role == Role::Chairs {
            of_chairs(purpose, parts, takeoff, list);
        } else {
            list.buy_for_purpose(role, purpose.called, purpose.by, parts);
        }
    }
}

/// Chairs of each height by themselves; those that `use` names keep the name of their purpose.
fn of_chairs(purpose: Purpose, parts: Parts, takeoff: &Takeoff, list: &mut List<'_>) {
    list.purposes.push((purpose.role.name(), parts.clone()));
    let rules = list.by.rules;
    let usual = rules.roles.get(&purpose.role);
    let usual = usual.and_then(|item| item.value.as_ref());
    let mut others: BTreeMap<Length, (At<ItemKey>, Parts)> = BTreeMap::new();
    let mut of_usual = Parts::new();
    for (section, part) in left_to_buy(purpose.role.name(), parts, &list.replaced) {
        let chair = match section {
            Section::Slab(i) => chair(&takeoff.slabs[i], rules),
            Section::Removal | Section::Extras | Section::Whole => None,
        };
        let chair = chair.filter(|chair| Some(&chair.item.value) != usual);
        match chair.and_then(|chair| chair.height.map(|height| (height.value, chair.item))) {
            None => of_usual.push((section, part)),
            Some((height, item)) => {
                let (_, parts) = others.entry(height).or_insert_with(|| (item, Parts::new()));
                parts.push((section, part));
            }
        }
    }
    list.buy_role(purpose.role, purpose.called, purpose.by, &of_usual);
    for (height, (item, parts)) in others {
        let name = format!("{} of {height}", purpose.called);
        list.buy(&item, name, purpose.by, &parts);
    }
}

/// What purposes take that removal has something of.
pub(super) fn of_removals(removals: &[RemovalQuantities], list: &mut List<'_>) {
    for purpose in built_in(Among::Removals, list) {
        let item = list.by.rules.roles.get(&purpose.role);
        let item = item.and_then(|item| item.value.as_ref());
        let sold = item.and_then(|item| list.by.rules.selling.get(item));
        let unit = sold.map(|sold| sold.unit);
        let parts = removals.iter().filter_map(|one| {
            let part = of_removal(purpose.role, one, unit)?;
            Some((Section::Removal, part))
        });
        let parts = parts.collect();
        list.buy_for_purpose(purpose.role, purpose.called, purpose.by, parts);
    }
}

/// What the answers about the site take, by their rules in the book.
pub(super) fn of_answers(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    for (question, rule, work) in works(takeoff, slabs, list.by.rules) {
        let Some(item) = &rule.item else { continue };
        let name = format!("site {}", question.name());
        let quantity = match &rule.each {
            Some(each) => Quantity::by(
                "so much for each",
                name.clone(),
                each.value.much.unit,
                of(&work).at_rate(("so much", "for each"), each),
            ),
            None if work.amount().unit == Unit::Lump => {
                let unit = list.unit(item).unwrap_or(Unit::Piece);
                let amount = Amount::new(work.value(), unit);
                Quantity::new(name.clone(), amount, work.working().clone())
            }
            None => work,
        };
        list.buy(item, name, "what the answer brings", &whole(quantity));
    }
}

/// These feet of form by the square foot of face: what is left of a form is as high as all of it is on the mean.
fn faces(
    role: Role,
    parts: &[(Section, Quantity)],
    slabs: &[SlabQuantities],
    list: &List<'_>,
) -> Parts {
    let apart = list.by.rules.roles.contains_key(&Role::DeepForms);
    let high = |section: &Section, part: &Quantity| {
        let Section::Slab(i) = section else {
            return None;
        };
        let found = &slabs[*i];
        let (feet, face) = if role == Role::DeepForms {
            (deep(found)?, deep_face(found)?)
        } else {
            (of(&formed(found, apart)), formed_face(found, apart))
        };
        let whole = Quantity::by("boards of it", "form", Unit::Foot, feet);
        if whole.value() == part.value() {
            return Some((*section, face));
        }
        let rule = "square feet of all of it × what is left of its feet ÷ all of them";
        let much = of(&face) * part / &whole;
        Some((
            *section,
            Quantity::by(rule, "face of form", Unit::SquareFoot, much),
        ))
    };
    let some = parts.iter().filter(|(_, part)| !part.value().is_zero());
    some.filter_map(|(section, part)| high(section, part))
        .collect()
}

/// The rules for parts of this sort that this book follows.
fn built_in(of: Among, list: &List<'_>) -> Vec<Purpose> {
    let known = &list.by.rules.roles;
    let purposes = Role::ALL.into_iter().map(Role::purpose);
    purposes
        .filter(|one| one.of == of && (one.left_out.is_none() || known.contains_key(&one.role)))
        .collect()
}

/// How much a slab has of what a purpose goes by.
fn of_slab(role: Role, slab: &Slab, found: &SlabQuantities, by: Policies<'_>) -> Option<Quantity> {
    let cures = |way| slab.curing.value == way;
    let day = by.pours.get(slab.placement);
    let is_cold = |day: &Day| season::is_cold(slab, *day, by.cure, by.rules);
    match role {
        Role::Chairs => chairs(found, by),
        Role::TieWire => Some(tie_wire(&slab.key, found.crossings.as_ref()?, by)),
        Role::Forms => Some(formed(found, by.rules.roles.contains_key(&Role::DeepForms))),
        Role::DeepForms => {
            let (rule, term) = ("deep edges and the sides of steps", deep(found)?);
            Some(Quantity::by(rule, "deep form", Unit::Foot, term))
        }
        Role::Stakes => Some(stakes(found, by)),
        Role::IsolationStrip => Some(strip(found)),
        Role::CuringCompound if cures(Curing::Compound) => {
            let coverage = Quantity::said("coverage of a gallon", &by.order.compound_coverage);
            let (rule, term) = ("area ÷ coverage", of(&found.surface()) / &coverage);
            Some(Quantity::by(rule, "curing compound", Unit::Gallon, term))
        }
        Role::CuringCover if cures(Curing::Cover) => Some(found.area.clone()),
        Role::Blankets => day.is_some_and(is_cold).then(|| found.area.clone()),
        Role::VaporRetarder => found.retarder.clone(),
        Role::CuringCompound
        | Role::CuringCover
        | Role::SawCutting
        | Role::BreakingMachine
        | Role::Delivery
        | Role::ShortLoad
        | Role::Standing
        | Role::Pump
        | Role::Labor
        | Role::Trip => None,
    }
}

/// How much of it a removal has, in the unit the item is sold by.
fn of_removal(role: Role, removal: &RemovalQuantities, unit: Option<Unit>) -> Option<Quantity> {
    let sawn = removal
        .saw_cut
        .as_ref()
        .filter(|_| role == Role::SawCutting)?;
    Some(match unit {
        Some(Unit::SquareFoot) => sawn.face.clone(),
        Some(_) | None => sawn.length.clone(),
    })
}

/// Steel stands on chairs; mesh laid on the ground and pulled up does not end in the middle.
fn chairs(slab: &SlabQuantities, by: Policies<'_>) -> Option<Quantity> {
    let each = Quantity::said("area held by a chair", &by.order.chair_area);
    (!slab.bars.is_empty() || slab.mesh.is_some()).then(|| {
        Quantity::by(
            "area ÷ area held by a chair",
            "chairs",
            Unit::Piece,
            (of(&slab.area) / &each).whole(),
        )
    })
}

/// Wire for the crossings that are tied.
fn tie_wire(slab: &str, crossings: &Quantity, by: Policies<'_>) -> Quantity {
    let tied = Quantity::said("crossings tied", &by.order.crossings_tied);
    let tie = Quantity::inches("wire for a tie", &by.order.wire_for_a_tie);
    let ties = Quantity::by(
        "crossings × share tied, up to a whole one",
        format!("{slab} wire ties"),
        Unit::Piece,
        (of(crossings) * &tied).whole(),
    );
    let roll = ("weight of a roll", "wire on a roll");
    Quantity::by(
        "ties × inches ÷ 12 × pounds a foot",
        format!("{slab} tie wire"),
        Unit::Pound,
        (of(&ties) * &tie / number(12)).at_rate(roll, &by.order.tie_wire),
    )
}

/// Edges and risers that take an ordinary board; deep ones too where the book has no other.
fn formed(slab: &SlabQuantities, deep_apart: bool) -> Quantity {
    let mut term = of(&slab.edges.straight) + &slab.edges.curved;
    let mut rule = "straight and curved";
    if !deep_apart && let Some(deep) = deep(slab) {
        term = term + deep;
        rule = "straight, curved and deep";
    }
    if let Some(steps) = &slab.steps {
        term = term + &steps.riser_form;
        rule = "edges and risers";
    }
    Quantity::by(rule, "formed edge", Unit::Foot, term)
}

/// Edges deeper than an ordinary board, and the sides of steps.
fn deep(slab: &SlabQuantities) -> Option<Term> {
    let edges = (!slab.edges.deep.value().is_zero()).then_some(&slab.edges.deep);
    let sides = slab.steps.as_ref();
    let sides = sides.and_then(|steps| steps.side_form.as_ref());
    let both = edges.into_iter().chain(sides).map(of);
    both.reduce(|edges, sides| edges + sides)
}

/// Square feet of the boards in `formed`.
fn formed_face(slab: &SlabQuantities, deep_apart: bool) -> Quantity {
    let edges = &slab.edges;
    let deep = deep_face(slab).filter(|_| !deep_apart);
    let risers = slab.steps.as_ref().map(|steps| &steps.riser_face);
    let all = [&edges.straight_face, &edges.curved_face].into_iter();
    let term = sum(all.chain(&deep).chain(risers));
    Quantity::by(
        "each form by its depth",
        "face of boards",
        Unit::SquareFoot,
        term,
    )
}

/// Square feet of the boards in `deep`.
fn deep_face(slab: &SlabQuantities) -> Option<Quantity> {
    deep(slab)?;
    let sides = slab
        .steps
        .as_ref()
        .and_then(|steps| steps.side_face.as_ref());
    let term = sum([&slab.edges.deep_face].into_iter().chain(sides));
    let rule = "each form by its depth";
    Some(Quantity::by(
        rule,
        "face of deep boards",
        Unit::SquareFoot,
        term,
    ))
}

/// One at each end of a form and between, no farther apart than the owner says.
fn stakes(slab: &SlabQuantities, by: Policies<'_>) -> Quantity {
    let straight = &by.order.stake_spacing;
    let on_curves = &by.order.stake_spacing_on_curves;
    let spacing = Quantity::feet("stake spacing", straight);
    let closer = if straight.value < on_curves.value {
        spacing.clone()
    } else {
        Quantity::feet("stake spacing on curves", on_curves)
    };
    let gaps = |length: &Quantity, spacing: &Quantity| (of(length) / spacing).whole();
    let of_form = |rule, stakes| Quantity::by(rule, "stakes", Unit::Piece, stakes);
    let straight = slab.edges.formed.iter().map(|length| (length, &spacing));
    let curved = slab.edges.bent.iter().map(|length| (length, &closer));
    let ends = straight.chain(curved).map(|(length, spacing)| {
        let rule = "length ÷ spacing up to a whole one, + 1";
        of_form(rule, gaps(length, spacing) + number(1))
    });
    // A form that closes on itself has no end: its last stake is its first.
    let rings = slab.edges.rings.iter().map(|length| {
        let rule = "length ÷ spacing up to a whole one, all round";
        of_form(rule, gaps(length, &closer))
    });
    let pieces: Vec<Quantity> = ends.chain(rings).collect();
    of_form("pieces of form added up", sum(&pieces))
}

/// Along edges, and around the boxes that have one.
fn strip(slab: &SlabQuantities) -> Quantity {
    let mut around = slab.boxes.iter().filter_map(|one| one.strip.as_ref());
    let Some(first) = around.next() else {
        return slab.edges.strip.clone();
    };
    let term = around.fold(of(&slab.edges.strip) + first, |all, one| all + one);
    Quantity::by("edges and boxes", "isolation strip", Unit::Foot, term)
}
