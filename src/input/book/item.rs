//! Items and their dated prices.

use std::collections::{BTreeMap, BTreeSet};

use rust_decimal::Decimal;

use super::{Selling, tables};
use crate::reading::{At, Node, Place, Problem, Problems, words};
use crate::values::{Amount, Day, Percent, Unit, UnitPrice};

/// The name of an item in the book.
pub type ItemKey = String;

/// What can be bought, hired, hauled or done.
#[derive(Clone, Debug)]
pub struct Item {
    pub place: Place,
    /// In words, for the office.
    pub is: String,
    pub selling: Selling,
    pub class: Class,
    /// Whether the owner pays sales tax on it.
    pub taxed: bool,
    /// Oldest first.
    pub dated: Vec<Dated>,
}

words! {
    /// What sort of cost it is.
    pub enum Class("unknown-class", "`{}` is not a class of item", one_of) {
        Material "material";
        Labor "labor";
        Equipment "equipment";
        Disposal "disposal";
        Subcontract "subcontract";
        Fee "fee";
    }
}

/// A price and the day it begins.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dated {
    pub from: Day,
    pub price: UnitPrice,
    pub basis: Basis,
    /// What the price of an hour is made of, where the owner says it so.
    pub wage: Option<Wage>,
    pub place: Place,
}

/// An hour of labor: what is paid, and what comes on top of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wage {
    pub base: At<UnitPrice>,
    /// Taxes, insurance, holidays: a percentage of the base.
    pub burden: At<Percent>,
}

impl Wage {
    fn price(&self) -> UnitPrice {
        let whole = Decimal::ONE_HUNDRED + self.burden.value.number();
        UnitPrice::new(self.base.value.dollars() * whole / Decimal::ONE_HUNDRED)
    }
}

/// Where a price comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Basis {
    Listed,
    Held { until: Day, note: Option<String> },
}

pub(super) fn read_all(
    node: &Node,
    problems: &mut Problems,
) -> (BTreeMap<ItemKey, Item>, BTreeSet<ItemKey>) {
    let (mut items, mut broken) = (BTreeMap::new(), BTreeSet::new());
    for entry in node.entries("`items`", problems) {
        match read(&entry.key, entry.key_place, &entry.node, problems) {
            Some(item) => drop(items.insert(entry.key.clone(), item)),
            None => drop(broken.insert(entry.key.clone())),
        }
    }
    (items, broken)
}

fn read(key: &str, place: Place, node: &Node, problems: &mut Problems) -> Option<Item> {
    let fields = node.fields(&tables::ITEM, problems).ok()?;
    let unit: Option<At<Unit>> = fields.need("unit", problems).ok();
    let class: Option<At<Class>> = fields.need("class", problems).ok();
    let class = class.map(|at| at.value);
    let is = fields
        .read::<String>("is", problems)
        .map_or_else(|| key.to_owned(), |text| text.value);
    let step = steps(fields.read("sold in", problems), unit.as_ref(), problems);
    let smallest = steps(fields.read("at least", problems), unit.as_ref(), problems);
    let work = fields.read("work", problems);
    let taxed = fields.yes("taxed", problems).map(|at| at.value);
    let dated = fields
        .required("prices", problems)
        .ok()
        .map(|node| prices(node, class, problems));
    let class = class?;
    let selling = Selling {
        unit: unit?.value,
        step,
        smallest,
        work,
        place,
    };
    Some(Item {
        place,
        is,
        selling,
        class,
        taxed: taxed.unwrap_or(class == Class::Material),
        dated: dated?,
    })
}

/// A step may be a bare number or repeat the item's unit; any other unit is a slip.
fn steps(step: Option<At<Amount>>, unit: Option<&At<Unit>>, problems: &mut Problems) -> Decimal {
    let Some(step) = step else {
        return Decimal::ZERO;
    };
    if let Some(unit) = unit
        && step.value.unit != Unit::Plain
        && step.value.unit != unit.value
    {
        let message = format!(
            "this item is sold by the {}, not by the {}",
            unit.value.symbol(),
            step.value.unit.symbol()
        );
        problems.push(
            Problem::new("wrong-unit", message)
                .at(step.place)
                .help(format!(
                    "write the number alone, or in {}",
                    unit.value.symbol()
                )),
        );
    }
    step.value.value
}

fn prices(node: &Node, class: Option<Class>, problems: &mut Problems) -> Vec<Dated> {
    let before = problems.len();
    let mut dated = Vec::new();
    for entry in node.entries("`prices`", problems) {
        let from = entry
            .key
            .parse::<Day>()
            .map_err(|unreadable| problems.push(Problem::from(unreadable).at(entry.key_place)))
            .ok();
        let wage = entry.node.is_map();
        let (price, wage) = if wage {
            let wage = self::wage(&entry.node, class, problems);
            (wage.as_ref().map(Wage::price), wage)
        } else {
            (entry.node.read(problems).ok(), None)
        };
        if let (Some(from), Some(price)) = (from, price) {
            dated.push(Dated {
                from,
                price,
                basis: Basis::Listed,
                wage,
                place: entry.node.place,
            });
        }
    }
    if dated.is_empty() && problems.len() == before && !node.reported {
        problems.push(
            Problem::new("no-prices", "this item has no price")
                .at(node.place)
                .help("write the day it begins and the price, for example `{2026-03-01: 34.50}`"),
        );
    }
    dated.sort_by_key(|dated| dated.from);
    // A day in quotes may have spaces in it: two keys, but one day.
    for pair in dated.windows(2).filter(|pair| pair[0].from == pair[1].from) {
        problems.push(
            Problem::new(
                "duplicate-key",
                format!("`{}` is written twice", pair[1].from),
            )
            .at(pair[1].place)
            .also(pair[0].place, "its first price")
            .help("keep one of the two"),
        );
    }
    dated
}

/// An hour's price as wage and burden; only labor is paid so.
fn wage(node: &Node, class: Option<Class>, problems: &mut Problems) -> Option<Wage> {
    let fields = node.fields(&tables::WAGE, problems).ok()?;
    let base = fields.need("wage", problems).ok();
    let burden = fields.need("burden", problems).ok();
    if class.is_some_and(|class| class != Class::Labor) {
        problems.push(
            Problem::new("wage-not-labor", "only an item of class labor has a wage")
                .at(node.heading)
                .help("write the price as an amount, or make the item's class `labor`"),
        );
        return None;
    }
    Some(Wage {
        base: base?,
        burden: burden?,
    })
}
