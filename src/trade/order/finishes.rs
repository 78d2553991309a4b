//! What finishes, colors and sealers take: bought once for the whole job, by the slabs that need it.
//!
//! What is put on goes by area, edge or pour; a color goes by the ordered yards
//! of the slabs that have it, truck by truck, since a whole truck is colored at once.

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::{ConcreteOrder, List, Parts, Section, Shares};
use crate::input::book::{ItemKey, Selling, SurfaceItem};
use crate::input::job::Takeoff;
use crate::input::phrases::Dose;
use crate::reading::At;
use crate::trade::measure::{Face, SlabQuantities, faces};
use crate::trade::term::{Term, of, sum};
use crate::trade::working::{Quantity, Working};
use crate::values::{Amount, Unit};

/// What is bought of each item for one purpose: an item is bought once.
struct Purchase {
    what: &'static str,
    rule: &'static str,
    items: BTreeMap<ItemKey, (At<ItemKey>, Parts, Shares)>,
}

impl Purchase {
    fn of(what: &'static str, rule: &'static str) -> Self {
        let items = BTreeMap::new();
        Self { what, rule, items }
    }

    fn add(
        &mut self,
        item: &At<ItemKey>,
        much: Quantity,
        shares: impl IntoIterator<Item = (Section, Decimal)>,
    ) {
        let empty = || (item.clone(), Parts::new(), Shares::new());
        let (_, parts, of_it) = self.items.entry(item.value.clone()).or_insert_with(empty);
        parts.push((Section::Whole, much));
        of_it.extend(shares);
    }

    fn buy(self, list: &mut List<'_>) {
        for (item, parts, shares) in self.items.into_values() {
            let name = format!("{} for {}", item.value, self.what);
            if let Some(need) = list.buy(&item, name, self.rule, &parts) {
                need.shares = shares;
            }
        }
    }
}

pub(super) fn list(
    takeoff: &Takeoff,
    slabs: &[SlabQuantities],
    orders: &[ConcreteOrder],
    list: &mut List<'_>,
) {
    let mut put_on = Purchase::of("finishes", "what the finishes of all slabs take");
    let faces = faces(takeoff, slabs);
    for (i, face) in faces.iter().enumerate() {
        let finish = list.by.rules.finishes.get(face.finish);
        for one in finish.iter().flat_map(|finish| &finish.items) {
            if let Dose::Pour(much) = one.dose.value {
                by_pour(one, much, i, &faces, takeoff, list, &mut put_on);
            } else {
                by_face(one, face, list, &mut put_on);
            }
        }
    }
    put_on.buy(list);
    colors(orders, list);
    sealers(takeoff, slabs, list);
}

/// By its area or its formed edge.
fn by_face(one: &SurfaceItem, face: &Face<'_>, list: &List<'_>, put_on: &mut Purchase) {
    let dosed = match one.dose.value {
        Dose::Area { .. } | Dose::Coverage { .. } => on_area(&face.area, &one.dose),
        Dose::Edge(ratio) => {
            let dose = one.dose.clone().map(|_| ratio);
            let term = of(&face.edge).at_rate(DOSE, &dose);
            Some(("formed edge × dose", term))
        }
        Dose::Yard(_) | Dose::Cement(_) | Dose::Pour(_) => None,
    };
    let (Some((rule, term)), Some(unit)) = (dosed, list.unit(&one.item)) else {
        return;
    };
    let name = format!("{} {}", face.name, one.item.value);
    let quantity = list.sets.settle(Quantity::by(rule, name, unit, term));
    let shares = [(Section::Slab(face.slab), quantity.value())];
    put_on.add(&one.item, quantity, shares);
}

/// What the two figures of a dose are called.
const DOSE: (&str, &str) = ("dose", "for each");

/// Area times dose, or area over coverage; each coat once more.
fn on_area(area: &Quantity, dose: &At<Dose>) -> Option<(&'static str, Term)> {
    let (rule, term, coats) = match dose.value {
        Dose::Area { ratio, coats } => {
            let ratio = dose.clone().map(|_| ratio);
            ("area × dose", of(area).at_rate(DOSE, &ratio), coats)
        }
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

/// Once for everything of this finish that is poured together; counted with the first such face.
fn by_pour(
    one: &SurfaceItem,
    much: Amount,
    i: usize,
    faces: &[Face<'_>],
    takeoff: &Takeoff,
    list: &List<'_>,
    put_on: &mut Purchase,
) {
    let finish = faces[i].finish;
    let pour_of = |face: &Face<'_>| takeoff.slabs[face.slab].placement;
    let pour = pour_of(&faces[i]);
    let is_with = |face: &&Face<'_>| face.finish == finish && pour_of(face) == pour;
    if faces[..i].iter().any(|face| is_with(&face)) {
        return;
    }
    let Some(unit) = list.unit(&one.item) else {
        return;
    };
    let much = Quantity::given("each pour", Amount::new(much.value, unit), one.dose.place);
    let name = format!("{} of {finish}, pour {}", one.item.value, pour + 1);
    let quantity = Quantity::by("once a pour", name, unit, of(&much));
    let quantity = list.sets.settle(quantity);
    let together = || faces.iter().filter(is_with);
    let whole: Decimal = together().map(|face| face.area.value()).sum();
    let much = quantity.value();
    let shares = together().map(|face| {
        let part = face.area.value().checked_div(whole);
        (Section::Slab(face.slab), much * part.unwrap_or_default())
    });
    put_on.add(&one.item, quantity, shares);
}

/// A color goes into every ordered yard, also into those that are left over.
fn colors(orders: &[ConcreteOrder], list: &mut List<'_>) {
    let mut mixed_in = Purchase::of("the mix", "what every colored order takes");
    for order in orders {
        let rules = list.by.rules;
        let color = order.color.as_ref();
        let Some(color) = color.and_then(|color| rules.colors.get(&color.value)) else {
            continue;
        };
        let (item, dose) = (&color.item, &color.dose);
        let dosed: Box<dyn Fn(&Quantity) -> Term> = match dose.value {
            Dose::Yard(ratio) => {
                let ratio = dose.clone().map(|_| ratio);
                Box::new(move |yards| of(yards).at_rate(DOSE, &ratio))
            }
            Dose::Cement(share) => {
                let mix = rules.mixes.get(&order.mix.value);
                let Some(content) = mix.and_then(|mix| mix.cement_content.as_ref()) else {
                    continue;
                };
                let share = Quantity::said("dose", &dose.clone().map(|_| share));
                Box::new(move |yards| of(yards).at_rate(("cement", "in each"), content) * &share)
            }
            Dose::Area { .. } | Dose::Coverage { .. } | Dose::Edge(_) | Dose::Pour(_) => continue,
        };
        let Some(selling) = rules.selling.get(&item.value) else {
            continue;
        };
        let (unit, (rule, term)) = (selling.unit, batches(order, selling, &*dosed));
        let name = format!("{} in {}", item.value, order.order.name());
        let quantity = list.sets.settle(Quantity::by(rule, name, unit, term));
        let net: Decimal = order.shares.iter().map(|(_, share)| share).sum();
        let much = quantity.value();
        let shares = order.shares.iter().map(|(section, share)| {
            let part = share.checked_div(net).unwrap_or_default();
            (*section, much * part)
        });
        mixed_in.add(item, quantity, shares);
    }
    mixed_in.buy(list);
}

/// Each truck is a batch of its own, and takes whole bags where it is sold by them.
fn batches(
    order: &ConcreteOrder,
    selling: &Selling,
    dosed: &dyn Fn(&Quantity) -> Term,
) -> (&'static str, Term) {
    if selling.step.is_zero() {
        return ("ordered yards × dose", dosed(&order.order));
    }
    let step = Amount::new(selling.step, selling.unit);
    let step = Quantity::given("sold in", step, selling.place);
    let loads = order.loads.iter().map(|yards| {
        let yards = Amount::new(*yards, Unit::CubicYard);
        let working = Working::plan("yards on a truck", vec![order.order.clone()], "");
        let load = Quantity::new("load", yards, working);
        let rule = "load × dose, up to how it is sold";
        let much = dosed(&load).up_to(&step);
        Quantity::by(rule, "color in a load", selling.unit, much)
    });
    let loads: Vec<Quantity> = loads.collect();
    let rule = "each load × dose, up to how it is sold: a batch takes whole bags";
    (rule, sum(&loads))
}

fn sealers(takeoff: &Takeoff, slabs: &[SlabQuantities], list: &mut List<'_>) {
    let mut sealed = Purchase::of("sealing", "what all sealed slabs take");
    for (i, (slab, measured)) in takeoff.slabs.iter().zip(slabs).enumerate() {
        let seal = slab.seal.as_ref();
        let sealers = &list.by.rules.sealers;
        let Some(sealer) = seal.and_then(|seal| sealers.get(&seal.value)) else {
            continue;
        };
        let found = match &sealer.coverage {
            Some(dose) => on_area(&measured.area, dose),
            None => Some(("the sealed area", of(&measured.area))),
        };
        let (Some((rule, term)), Some(unit)) = (found, list.unit(&sealer.item)) else {
            continue;
        };
        let name = format!("{} {}", slab.key, sealer.item.value);
        let quantity = list.sets.settle(Quantity::by(rule, name, unit, term));
        let shares = [(Section::Slab(i), quantity.value())];
        sealed.add(&sealer.item, quantity, shares);
    }
    sealed.buy(list);
}
