//! Items and their dated prices.

use rust_decimal::Decimal;

use super::class::Class;
use super::group::CostGroup;
use super::stage::Stage;
use crate::input::checks::{length_above_zero, written};
use crate::input::phrases::{Days, Ratio};
use crate::reading::keys::keys;
use crate::reading::{At, Entry, Fields, Group, Node, Place, Problem, Problems, Read};
use crate::values::{Amount, Day, Length, Money, Percent, Unit, UnitPrice, rounding};

/// The name of an item in the book.
pub type ItemKey = String;

keys! {
    /// What can be bought, hired, hauled or done.
    pub struct Item in "an item" {
        unit: Unit = "unit", required, "what one is", "cu yd";
        /// For the office.
        is: Option<String> = "is", else "its name", "what it is, in words", "Crushed stone, 3/4 in";
        class: Class = "class", required,
            "material, labor, equipment, disposal, subcontract or fee", "material";
        /// Oldest first.
        dated: Vec<Dated> = "prices" as "prices by day", required,
            "the price from that day on; for labor also wage and burden", "{2026-03-01: 34.50}", by prices, of Wage;
        /// Zero when it is weighed or measured.
        step: Decimal = "sold in" as "number", else "0", "bought in such steps", "1/2", by steps;
        least: Option<At<Amount>> = "at least" as "amount or dollars", none,
            "smallest sale, or with a dollar sign the smallest charge of an order", "$60.00", by least;
        waste: Option<At<Percent>> = "waste", none,
            "bought over what is needed, before it goes up to how it is sold", "5%", by waste;
        work: Option<At<Ratio>> = "work", none, "hours that come with it", "16 hours per 100 ft";
        stage: Stage = "stage" as "word", usual "form",
            "when that work is done: remove, form, place, strip or return", "return";
        after: Option<At<Days>> = "after", none,
            "days from the last pour until it goes on; the crew comes back for it then", "28 days", by after;
        height: Option<At<Length>> = "height", none,
            "of a chair: how high it holds steel; of several the nearest to where it belongs is bought", "2 in",
            then written(length_above_zero);
        group: Option<CostGroup> = "group" as "text", else "its class",
            "where it stands on your cost sheet, with a sum of its own", "Ground work", by group;
        taxed: Option<At<bool>> = "taxed", none,
            "whether you pay sales tax on it; materials are", "yes";
        .. place: Place;
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

keys! {
    /// An hour of labor: what is paid, and what comes on top of it.
    #[derive(PartialEq, Eq)]
    pub struct Wage in "a price of labor" {
        base: At<UnitPrice> = "wage" as "amount", required,
            "what an hour is paid, the crew's mean", "31.40";
        /// A percentage of the base.
        burden: At<Percent> = "burden", usual "0%",
            "taxes, insurance and paid days on top of it", "51%";
    }
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

/// How an item is sold, without its price.
#[derive(Clone, Debug)]
pub struct Selling {
    pub unit: Unit,
    /// Bought in such steps; zero when it is weighed or measured.
    pub step: Decimal,
    pub smallest: Decimal,
    /// Over what is needed.
    pub waste: Option<At<Percent>>,
    /// Hours that come with each.
    pub work: Option<At<Ratio>>,
    /// When that work is done.
    pub stage: Stage,
    /// Days from the last pour until it goes on.
    pub after: Option<At<Days>>,
    /// Of a chair.
    pub height: Option<At<Length>>,
    pub place: Place,
}

impl Item {
    /// In words, or else by its name.
    pub fn called<'a>(&'a self, name: &'a str) -> &'a str {
        self.is.as_deref().unwrap_or(name)
    }

    /// Whether the owner pays sales tax on it.
    pub fn is_taxed(&self) -> bool {
        let usual = self.class == Class::Material;
        self.taxed.as_ref().map_or(usual, |said| said.value)
    }

    /// The smallest charge in money, where the item has one.
    pub fn least_charge(&self) -> Option<At<Money>> {
        let least = self.least.as_ref().filter(|least| is_money(least.value))?;
        let money = rounding::to_cents(least.value.value);
        Some(At::new(money, least.place))
    }

    pub(super) fn selling(&self) -> Selling {
        let smallest = self.least.as_ref().filter(|least| !is_money(least.value));
        // There is no part of one.
        let wasted_piece = self.waste.is_some() && self.step.is_zero() && self.unit.is_counted();
        Selling {
            unit: self.unit,
            step: if wasted_piece {
                Decimal::ONE
            } else {
                self.step
            },
            smallest: smallest.map_or(Decimal::ZERO, |least| least.value.value),
            waste: self.waste.clone(),
            work: self.work.clone(),
            stage: self.stage,
            after: self.after.clone(),
            height: self.height.clone(),
            place: self.place,
        }
    }
}

/// The name of an item.
pub(super) fn item_named(node: &Node, problems: &mut Problems) -> Read<At<ItemKey>> {
    node.text_at("an item's name", problems)
}

/// An item, or nothing for the `none` of what is not charged.
pub(super) fn or_none(item: At<ItemKey>) -> Option<At<ItemKey>> {
    (item.value != "none").then_some(item)
}

/// A step may be a bare number or repeat the item's unit; any other unit is a slip.
fn steps(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Decimal {
    let Some(step) = fields.read::<Amount>(key, problems) else {
        return Decimal::ZERO;
    };
    if step.value.unit != Unit::Plain {
        in_its_unit(fields, &step, "write the number alone, or", problems);
    }
    step.value.value
}

/// An amount in the item's unit, or money; a number alone could mean either.
fn least(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<At<Amount>> {
    let node = fields.node(key)?;
    let text = node.text("an amount", problems).ok()?.trim();
    let dollars = text.strip_prefix('$').or_else(|| {
        let words = ["dollars", "dollar"];
        words.iter().find_map(|word| text.strip_suffix(word))
    });
    if let Some(dollars) = dollars {
        return match dollars.trim().parse::<Money>() {
            Ok(money) => Some(At::new(money.into(), node.place)),
            Err(unreadable) => {
                problems.unreadable(unreadable, node.place);
                None
            }
        };
    }
    let least = fields.read::<Amount>(key, problems)?;
    if least.value.unit != Unit::Plain {
        in_its_unit(fields, &least, "write it", problems);
        return Some(least);
    }
    let unit = fields.said::<Unit>("unit").map(|unit| unit.value);
    let many = Amount::new(least.value.value, unit.unwrap_or(Unit::Ton));
    let charge = Amount::new(least.value.value, Unit::Dollar);
    let message = format!("`at least: {text}` may mean {many} or {charge}");
    let problem = Problem::new("least-of-what", message).at(least.place);
    problems.push(problem.help(format!(
        "write `at least: {many}` for the smallest sale, or `at least: {charge}` for the smallest charge"
    )));
    None
}

fn group(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<CostGroup> {
    let said = fields.read::<String>(key, problems)?;
    Some(CostGroup::said(&said.value))
}

/// What goes on days after the pour is done when the crew is back.
fn after(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<At<Days>> {
    let after = fields.read::<Days>(key, problems)?;
    let stage = fields.said::<Stage>("stage").map(|stage| stage.value);
    if fields.node("stage").is_none() || stage == Some(Stage::Return) {
        return Some(after);
    }
    let message = "what goes on days after the pour is done on return";
    let problem = Problem::new("after-not-return", message).at(after.place);
    problems.push(problem.help("take `stage` out, or `after`"));
    None
}

/// Only what is used up is wasted.
fn waste(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Option<At<Percent>> {
    let waste = fields.read::<Percent>(key, problems)?;
    let class = fields.said::<Class>("class").map(|class| class.value);
    if class.is_none_or(|class| class == Class::Material) {
        return Some(waste);
    }
    let problem = Problem::new("waste-not-material", "only material is wasted").at(waste.place);
    problems.push(problem.help("take `waste` out, or make the item's class `material`"));
    None
}

fn in_its_unit(fields: &Fields<'_>, said: &At<Amount>, how: &str, problems: &mut Problems) {
    let Some(unit) = fields.said::<Unit>("unit").map(|unit| unit.value) else {
        return;
    };
    if said.value.unit != unit {
        let (unit, other) = (unit.symbol(), said.value.unit.symbol());
        let message = format!("this item is sold by the {unit}, not by the {other}");
        let problem = Problem::new("wrong-unit", message).at(said.place);
        problems.push(problem.help(format!("{how} in {unit}")));
    }
}

fn is_money(amount: Amount) -> bool {
    amount.unit == Unit::Dollar
}

fn prices(fields: &Fields<'_>, key: &'static str, problems: &mut Problems) -> Read<Vec<Dated>> {
    let node = fields.required(key, problems)?;
    let class = fields.said("class").map(|class| class.value);
    let before = problems.len();
    let mut dated = Vec::new();
    for entry in node.entries("`prices`", problems) {
        dated.extend(price(entry, class, problems));
    }
    if dated.is_empty() && problems.len() == before && !node.reported {
        let problem = Problem::new("no-prices", "this item has no price").at(node.place);
        let help = "write the day it begins and the price, for example `{2026-03-01: 34.50}`";
        problems.push(problem.help(help));
    }
    dated.sort_by_key(|dated| dated.from);
    // A day in quotes may have spaces in it: two keys, but one day.
    for pair in dated.windows(2).filter(|pair| pair[0].from == pair[1].from) {
        let message = format!("`{}` is written twice", pair[1].from);
        let problem = Problem::new("duplicate-key", message).at(pair[1].place);
        let problem = problem.also(pair[0].place, "its first price");
        problems.push(problem.help("keep one of the two"));
    }
    Ok(dated)
}

fn price(entry: &Entry, class: Option<Class>, problems: &mut Problems) -> Read<Dated> {
    let from = entry
        .key
        .parse()
        .map_err(|unreadable| problems.unreadable(unreadable, entry.key_place));
    let (price, wage) = if entry.node.is_map() {
        let wage = wage(&entry.node, class, problems)?;
        (wage.price(), Some(wage))
    } else {
        (entry.node.read(problems)?, None)
    };
    Ok(Dated {
        from: from?,
        price,
        basis: Basis::Listed,
        wage,
        place: entry.node.place,
    })
}

/// An hour's price as wage and burden; only labor is paid so.
fn wage(node: &Node, class: Option<Class>, problems: &mut Problems) -> Read<Wage> {
    let fields = node.fields(Wage::TABLE, problems)?;
    let wage = Wage::read(&fields, problems);
    if class.is_none_or(|class| class == Class::Labor) {
        return wage;
    }
    let message = "only an item of class labor has a wage";
    let problem = Problem::new("wage-not-labor", message).at(node.heading);
    let help = "write the price as an amount, or make the item's class `labor`";
    Err(problems.push(problem.help(help)))
}
