//! Rules of buying: which item is meant, in what pieces it is sold. No price is known here.

mod stock;
mod supply;

use stock::{bars, base, disposal, fiber, mesh, mix};
use supply::supply;

use std::collections::BTreeMap;

use rust_decimal::Decimal;

use super::rates::{self, Rates};
use super::{ItemKey, tables};
use crate::input::phrases::Ratio;
use crate::reading::{At, Fields, Node, Place, Problem, Problems};
use crate::values::{Amount, Length, Percent, Unit};

/// Everything of the book except prices.
#[derive(Clone, Debug, Default)]
pub struct Rules {
    pub mixes: BTreeMap<String, Mix>,
    pub bases: BTreeMap<String, BaseStock>,
    pub bars: BTreeMap<String, BarStock>,
    pub mesh: BTreeMap<String, MeshStock>,
    pub fiber: BTreeMap<String, FiberStock>,
    pub disposal: BTreeMap<String, Dumping>,
    pub supply: Option<Supply>,
    pub roles: BTreeMap<Role, At<Option<ItemKey>>>,
    pub rates: Rates,
    /// How each item is sold; prices stay in the book.
    pub selling: BTreeMap<ItemKey, Selling>,
    /// Where `use` and `rates` stand, for messages about what they lack.
    pub place: Option<Place>,
}

/// How an item is sold, without its price.
#[derive(Clone, Debug)]
pub struct Selling {
    pub unit: Unit,
    /// Bought in such steps; zero when it is weighed or measured.
    pub step: Decimal,
    pub smallest: Decimal,
    /// Hours that come with each.
    pub work: Option<At<Ratio>>,
    pub place: Place,
}

#[derive(Clone, Debug)]
pub struct Mix {
    pub item: At<ItemKey>,
    pub strength: At<Amount>,
    pub air: At<Percent>,
    pub aggregate: At<Length>,
    pub cement: At<String>,
}

#[derive(Clone, Debug)]
pub struct BaseStock {
    pub item: At<ItemKey>,
    pub delivered: At<Ratio>,
}

#[derive(Clone, Debug)]
pub struct BarStock {
    pub item: At<ItemKey>,
    pub stock: At<Length>,
    /// In bar diameters.
    pub lap: At<Amount>,
}

#[derive(Clone, Debug)]
pub struct MeshStock {
    pub item: At<ItemKey>,
    pub width: At<Length>,
    pub length: At<Length>,
    pub lap: At<Length>,
}

#[derive(Clone, Debug)]
pub struct FiberStock {
    pub item: At<ItemKey>,
    pub by: FiberBy,
    pub dose: At<Ratio>,
    pub bag: At<Amount>,
}

/// Who adds the fiber: the plant by the yard, or the crew by the bag.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FiberBy {
    Plant,
    Us,
}

#[derive(Clone, Debug)]
pub struct Dumping {
    pub item: At<ItemKey>,
    /// Loose yards from one solid yard.
    pub loose: At<Amount>,
    pub weight: At<Ratio>,
    pub load: At<Amount>,
}

/// How the plant sells concrete.
#[derive(Clone, Debug)]
pub struct Supply {
    pub sold_in: At<Amount>,
    pub smallest: At<Amount>,
    pub truck: At<Amount>,
    pub short_load: Option<ShortLoad>,
    pub free_time: At<Ratio>,
    pub pump_prime: At<Amount>,
}

#[derive(Clone, Debug)]
pub struct ShortLoad {
    pub under: At<Amount>,
    pub counted: ShortCount,
    pub flat: bool,
}

/// Which loads are looked at for being short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShortCount {
    ByTruck,
    ByOrder,
    LastTruck,
}

/// What an item may stand for in every job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    Forms,
    Stakes,
    IsolationStrip,
    CuringCompound,
    Chairs,
    ShortLoad,
    Delivery,
    Standing,
    Pump,
    Labor,
    Trip,
}

impl Role {
    /// The key under `use`, and the unit its item must have.
    pub const ALL: [(Self, &'static str, Unit); 11] = [
        (Self::Forms, "forms", Unit::Foot),
        (Self::Stakes, "stakes", Unit::Piece),
        (Self::IsolationStrip, "isolation strip", Unit::Foot),
        (Self::CuringCompound, "curing compound", Unit::Gallon),
        (Self::Chairs, "chairs", Unit::Piece),
        (Self::ShortLoad, "short load", Unit::CubicYard),
        (Self::Delivery, "delivery", Unit::Load),
        (Self::Standing, "standing time", Unit::Minute),
        (Self::Pump, "pump", Unit::Trip),
        (Self::Labor, "labor", Unit::Hour),
        (Self::Trip, "trip", Unit::Trip),
    ];

    pub fn key(self) -> &'static str {
        Self::ALL
            .iter()
            .find(|(role, ..)| *role == self)
            .map_or("", |(_, key, _)| key)
    }
}

impl Rules {
    /// Every item the rules name, with the place of the name.
    pub fn items_named(&self) -> impl Iterator<Item = (&str, Place)> {
        let mixes = self.mixes.values().map(|mix| &mix.item);
        let bases = self.bases.values().map(|base| &base.item);
        let bars = self.bars.values().map(|bar| &bar.item);
        let mesh = self.mesh.values().map(|mesh| &mesh.item);
        let fiber = self.fiber.values().map(|fiber| &fiber.item);
        let disposal = self.disposal.values().map(|dumping| &dumping.item);
        let named = mixes
            .chain(bases)
            .chain(bars)
            .chain(mesh)
            .chain(fiber)
            .chain(disposal)
            .map(|at| (at.value.as_str(), at.place));
        let roles = self
            .roles
            .values()
            .filter_map(|role| role.value.as_deref().map(|key| (key, role.place)));
        named.chain(roles)
    }
}

pub(super) fn read(book: &Fields<'_>, problems: &mut Problems) -> Rules {
    let mut rules = Rules {
        place: Some(book.heading()),
        ..Rules::default()
    };
    each(
        book,
        "mixes",
        problems,
        |node, problems| mix(node, problems),
        &mut rules.mixes,
    );
    each(
        book,
        "bases",
        problems,
        |node, problems| base(node, problems),
        &mut rules.bases,
    );
    each(
        book,
        "bars",
        problems,
        |node, problems| bars(node, problems),
        &mut rules.bars,
    );
    each(
        book,
        "mesh",
        problems,
        |node, problems| mesh(node, problems),
        &mut rules.mesh,
    );
    each(
        book,
        "fiber",
        problems,
        |node, problems| fiber(node, problems),
        &mut rules.fiber,
    );
    each(
        book,
        "disposal",
        problems,
        |node, problems| disposal(node, problems),
        &mut rules.disposal,
    );
    rules.supply = book
        .required("supply", problems)
        .and_then(|node| supply(node, problems));
    if let Some(node) = book.required("use", problems) {
        rules.roles = roles(node, problems);
    }
    if let Some(node) = book.required("rates", problems) {
        rules.rates = rates::read(node, problems);
    }
    rules
}

fn each<T>(
    book: &Fields<'_>,
    key: &str,
    problems: &mut Problems,
    read: impl Fn(&Node, &mut Problems) -> Option<T>,
    into: &mut BTreeMap<String, T>,
) {
    let Some(node) = book.node(key) else { return };
    for entry in node.entries(&format!("`{key}`"), problems) {
        if let Some(one) = read(&entry.node, problems) {
            into.insert(entry.key.clone(), one);
        }
    }
}

fn roles(node: &Node, problems: &mut Problems) -> BTreeMap<Role, At<Option<ItemKey>>> {
    let mut roles = BTreeMap::new();
    for entry in node.entries("`use`", problems) {
        let Some((role, ..)) = Role::ALL.iter().find(|(_, key, _)| *key == entry.key) else {
            let keys: Vec<&str> = Role::ALL.iter().map(|(_, key, _)| *key).collect();
            let problem = Problem::new("unknown-key", format!("`use` has no key `{}`", entry.key))
                .at(entry.key_place);
            problems.push(problem.help(
                match crate::reading::suggest::closest(&entry.key, keys.iter().copied()) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => format!("its keys are {}", keys.join(", ")),
                },
            ));
            continue;
        };
        if let Some(item) = entry.node.text("an item's name", problems) {
            let value = (item != "none").then(|| item.to_owned());
            roles.insert(
                *role,
                At {
                    value,
                    place: entry.node.place,
                },
            );
        }
    }
    roles
}

fn item(fields: &Fields<'_>, problems: &mut Problems) -> Option<At<ItemKey>> {
    fields
        .required("item", problems)
        .and_then(|_| fields.text("item", problems))
}

fn yards(fields: &Fields<'_>, key: &str, problems: &mut Problems) -> Option<At<Amount>> {
    let amount = fields.usual(key, problems)?;
    crate::input::expect_unit(amount, Unit::CubicYard, key, problems)
}

fn per_yard(ratio: Option<At<Ratio>>, problems: &mut Problems) -> Option<At<Ratio>> {
    let ratio = ratio?;
    if ratio.value.per.unit == Unit::CubicYard {
        return Some(ratio);
    }
    problems.push(
        Problem::new("wrong-unit", "this is given for each cubic yard")
            .at(ratio.place)
            .help("end it with `per cu yd`"),
    );
    None
}

fn at_least(
    at: At<Length>,
    least: Length,
    why: &str,
    problems: &mut Problems,
) -> Option<At<Length>> {
    if least < at.value || (least == at.value && least != Length::ZERO) {
        return Some(at);
    }
    problems.push(
        Problem::new("not-above-zero", why)
            .at(at.place)
            .help("check the figure and its unit"),
    );
    None
}

/// One of a few words, or the default.
fn word(
    fields: &Fields<'_>,
    key: &str,
    words: &[&str],
    problems: &mut Problems,
) -> Option<At<String>> {
    let found = fields.text(key, problems).unwrap_or_else(|| At {
        value: words[0].to_owned(),
        place: fields.heading(),
    });
    if words.contains(&found.value.as_str()) {
        return Some(found);
    }
    let quoted: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
    problems.push(
        Problem::new("unknown-word", format!("`{key}` is not `{}`", found.value))
            .at(found.place)
            .help(format!("write {}", quoted.join(" or "))),
    );
    None
}
