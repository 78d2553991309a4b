//! What finishes, colors and sealers take: bought once for the whole job, by the slabs that need it.
//!
//! What is put on goes by area, edge or pour; a color goes by the ordered yards
//! of the slabs that have it, since the whole truck is colored.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::{ConcreteOrder, List, Section};
use crate::input::book::{Curing, ItemKey, Role, SurfaceItem};
use crate::input::job::Takeoff;
use crate::input::phrases::{Dose, Ratio};
use crate::reading::At;
use crate::trade::measure::{Face, SlabQuantities, faces};
use crate::trade::term::{Term, of};
use crate::trade::working::Quantity;
use crate::values::{Amount, Unit};

/// Some of an item, and which slabs it is for.
struct Part {
    quantity: Quantity,
    shares: Vec<(Section, Decimal)>,
}

/// The parts of every item, so that an item is bought once.
type Parts = BTreeMap<ItemKey, (At<ItemKey>, Vec<Part>)>;

pub(super) fn list(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    let mut put_on = Parts::new();
    let faces = faces(takeoff, slabs);
    for (i, face) in faces.iter().enumerate() {
        let finishes = &list.ways.rules.finishes;
        let Some(finish) = finishes.get(face.finish) else {
            continue;
        };
        for one in &finish.items {
            let part = match one.dose.value {
                Dose::Pour(_) => by_pour(one, i, &faces, takeoff, list),
                _ => by_face(one, face, list),
            };
            add(&mut put_on, &one.item, part);
        }
    }
    buy(
        &put_on,
        "finishes",
        "what the finishes of all slabs take",
        list,
    );
    colors(orders, list);
    sealers(takeoff, slabs, list);
    cover(takeoff, slabs, list);
}

fn add(parts: &mut Parts, item: &At<ItemKey>, part: Option<Part>) {
    if let Some(part) = part {
        let (_, known) = parts
            .entry(item.value.clone())
            .or_insert_with(|| (item.clone(), Vec::new()));
        known.push(part);
    }
}

fn buy(parts: &Parts, what: &str, rule: &'static str, list: &mut List<'_>) {
    for (item, parts) in parts.values() {
        let whole: Vec<(Section, Quantity)> = parts
            .iter()
            .map(|part| (Section::Whole, part.quantity.clone()))
            .collect();
        let before = list.needs.len();
        list.buy(
            item,
            &format!("{} for {what}", item.value),
            rule,
            &whole,
            None,
        );
        if let Some(need) = list.needs.get_mut(before) {
            need.shares = parts.iter().flat_map(|part| part.shares.clone()).collect();
        }
    }
}

/// By its area or its formed edge.
fn by_face(one: &SurfaceItem, face: &Face<'_>, list: &List<'_>) -> Option<Part> {
    let (rule, term) = match one.dose.value {
        Dose::Area { .. } | Dose::Coverage { .. } => on_area(&face.area, &one.dose)?,
        Dose::Edge(ratio) => (
            "formed edge × dose",
            dosed(of(&face.edge), ratio, &one.dose),
        ),
        Dose::Yard(_) | Dose::Cement(_) | Dose::Pour(_) => return None,
    };
    let name = format!("{} {}", face.name, one.item.value);
    let unit = list.ways.rules.selling.get(&one.item.value)?.unit;
    let quantity = list.sets.settle(Quantity::by(rule, name, unit, term));
    let shares = vec![(Section::Slab(face.slab), quantity.value())];
    Some(Part { quantity, shares })
}

/// Area times dose, or area over coverage; each coat once more.
fn on_area(area: &Quantity, dose: &At<Dose>) -> Option<(&'static str, Term)> {
    let (rule, term, coats) = match dose.value {
        Dose::Area { ratio, coats } => ("area × dose", dosed(of(area), ratio, dose), coats),
        Dose::Coverage { ratio, coats } => {
            let covered = Quantity::given("covered", ratio.much, dose.place);
            let by = Quantity::given("by", ratio.per, dose.place);
            ("area ÷ coverage", of(area) * &by / &covered, coats)
        }
        Dose::Edge(_) | Dose::Yard(_) | Dose::Cement(_) | Dose::Pour(_) => return None,
    };
    if coats == 1 {
        return Some((rule, term));
    }
    let plain = Amount::new(Decimal::from(coats), Unit::Plain);
    let coats = Quantity::given("coats", plain, dose.place);
    Some(("area × coats, by dose or coverage", term * &coats))
}

fn dosed(work: Term, ratio: Ratio, dose: &At<Dose>) -> Term {
    let much = Quantity::given("dose", ratio.much, dose.place);
    let per = Quantity::given("for each", ratio.per, dose.place);
    work * &much / &per
}

/// Once for everything of this finish that is poured together; counted with the first such face.
fn by_pour(
    one: &SurfaceItem,
    i: usize,
    faces: &[Face<'_>],
    takeoff: &Takeoff,
    list: &List<'_>,
) -> Option<Part> {
    let Dose::Pour(much) = one.dose.value else {
        return None;
    };
    let finish = faces[i].finish;
    let pour_of = |face: &Face<'_>| takeoff.slabs[face.slab].placement;
    let pour = pour_of(&faces[i]);
    let together: Vec<usize> = (0..faces.len())
        .filter(|&other| faces[other].finish == finish && pour_of(&faces[other]) == pour)
        .collect();
    if together.first() != Some(&i) {
        return None;
    }
    let unit = list.ways.rules.selling.get(&one.item.value)?.unit;
    let much = Quantity::given("each pour", Amount::new(much.value, unit), one.dose.place);
    let name = format!("{} of {finish}, pour {}", one.item.value, pour + 1);
    let quantity = Quantity::by("once a pour", name, unit, of(&much));
    let quantity = list.sets.settle(quantity);
    let whole: Decimal = together.iter().map(|&i| faces[i].area.value()).sum();
    let shares = together.iter().map(|&i| {
        let part = faces[i].area.value().checked_div(whole);
        (
            Section::Slab(faces[i].slab),
            quantity.value() * part.unwrap_or_default(),
        )
    });
    Some(Part {
        shares: shares.collect(),
        quantity,
    })
}

/// A color goes into every ordered yard, also into those that are left over.
fn colors(orders: &[ConcreteOrder], list: &mut List<'_>) {
    let mut mixed_in = Parts::new();
    for order in orders {
        let rules = list.ways.rules;
        let Some(color) = order
            .color
            .as_ref()
            .and_then(|color| rules.colors.get(&color.value))
        else {
            continue;
        };
        let dose = &color.dose;
        let (rule, term) = match dose.value {
            Dose::Yard(ratio) => ("ordered yards × dose", dosed(of(&order.order), ratio, dose)),
            Dose::Cement(share) => {
                let content = rules
                    .mixes
                    .get(&order.mix.value)
                    .and_then(|mix| mix.cement_content.as_ref());
                let Some(content) = content else { continue };
                let much = Quantity::given("cement", content.value.much, content.place);
                let per = Quantity::given("in each", content.value.per, content.place);
                let share = At {
                    value: share,
                    place: dose.place,
                };
                let share = Quantity::percent("dose", &share);
                (
                    "ordered yards × cement in a yard × dose",
                    of(&order.order) * &much / &per * &share,
                )
            }
            Dose::Area { .. } | Dose::Coverage { .. } | Dose::Edge(_) | Dose::Pour(_) => continue,
        };
        let item = &color.item;
        let Some(selling) = rules.selling.get(&item.value) else {
            continue;
        };
        let name = format!("{} in {}", item.value, order.order.name());
        let quantity = list
            .sets
            .settle(Quantity::by(rule, name, selling.unit, term));
        let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
        let shares = order.shares.iter().map(|(section, share)| {
            let part = share.checked_div(net).unwrap_or_default();
            (*section, quantity.value() * part)
        });
        let shares = shares.collect();
        add(&mut mixed_in, item, Some(Part { quantity, shares }));
    }
    buy(&mixed_in, "the mix", "what every colored order takes", list);
}

fn sealers(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut sealed = Parts::new();
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let rules = list.ways.rules;
        let sealer = slab
            .seal
            .as_ref()
            .and_then(|seal| rules.sealers.get(&seal.value));
        let Some(sealer) = sealer else { continue };
        let found = match &sealer.coverage {
            Some(dose) => on_area(&measured.area, dose),
            None => Some(("the sealed area", of(&measured.area))),
        };
        let unit = rules.selling.get(&sealer.item.value).map(|one| one.unit);
        let (Some((rule, term)), Some(unit)) = (found, unit) else {
            continue;
        };
        let name = format!("{} {}", slab.key, sealer.item.value);
        let quantity = list.sets.settle(Quantity::by(rule, name, unit, term));
        let shares = vec![(Section::Slab(i), quantity.value())];
        add(&mut sealed, &sealer.item, Some(Part { quantity, shares }));
    }
    buy(&sealed, "sealing", "what all sealed slabs take", list);
}

/// Covers are bought by the slab they lie on.
fn cover(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let areas = slabs
        .iter()
        .enumerate()
        .map(|(i, slab)| (Section::Slab(i), slab.area.clone()))
        .collect();
    let covered = cured_by(Curing::Cover, takeoff, areas);
    list.buy_role(
        Role::CuringCover,
        "curing cover",
        "area of the slabs that cure under a cover",
        &covered,
        None,
    );
}

/// What is left of `parts` for the slabs that are cured in this way.
pub(super) fn cured_by(
    way: Curing,
    takeoff: &Takeoff,
    parts: Vec<(Section, Quantity)>,
) -> Vec<(Section, Quantity)> {
    let fits = |section: &Section| match section {
        Section::Slab(i) => takeoff.slabs[*i].curing.value == way,
        Section::Removal | Section::Extras | Section::Whole => false,
    };
    parts
        .into_iter()
        .filter(|(section, _)| fits(section))
        .collect()
}
