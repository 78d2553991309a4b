//! Line items: every amount with its cause and its working.

use rust_decimal::Decimal;

use super::prices::Prices;
use super::pricing::Pricing;
use crate::input::book::{Class, CostGroup, Dated, Item, ItemKey, PriceBook, rates_help};
use crate::reading::{At, Problem, Problems, Read};
use crate::trade::needs::JobNeeds;
use crate::trade::order::{Missing, Need, NeedItem, Section};
use crate::trade::term::{number, of};
use crate::trade::working::Quantity;
use crate::values::{Amount, Money, Unit};

/// Why a line is there. Two estimates of one job are compared by their causes.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// A need, by its name.
    Need(String),
    /// What an order of this item comes to less than its smallest charge.
    LeastCharge(ItemKey),
    PurchaseTax(String),
    Overhead,
    Contingency,
    Profit,
    Minimum,
    Rounding,
    /// The price was fixed by the owner.
    Fixed,
    /// Taken off, by the words the customer reads.
    Discount(String),
    Tax(String),
}

impl Cause {
    /// In words, for the office; what is bought is called by its book instead.
    pub fn title(&self) -> String {
        match self {
            Self::Need(name) => name.clone(),
            Self::LeastCharge(item) => format!("Minimum charge, {item}"),
            Self::PurchaseTax(name) => format!("{} paid on purchases", capital(name)),
            Self::Overhead => "Overhead".to_owned(),
            Self::Contingency => "Contingency".to_owned(),
            Self::Profit => "Profit".to_owned(),
            Self::Minimum => "Up to the minimum job".to_owned(),
            Self::Rounding => "Price rounded up".to_owned(),
            Self::Fixed => "Left by the fixed price".to_owned(),
            Self::Discount(says) => format!("Taken off: {says}"),
            Self::Tax(name) => capital(name),
        }
    }
}

fn capital(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + chars.as_str()
    })
}

/// Which total a line belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tier {
    /// Direct cost.
    Direct,
    /// Overhead and contingency: with direct cost, the cost.
    Indirect,
    /// Profit, minimum, rounding: with cost, the price before tax.
    Price,
    Tax,
}

/// An amount, its cause and how it came about.
#[derive(Clone, Debug)]
pub struct LineItem {
    pub cause: Cause,
    pub side: Tier,
    /// In words, for the office.
    pub title: String,
    /// For direct cost.
    pub class: Option<Class>,
    /// Of the owner's own, in place of the class, where the cost is told.
    pub group: Option<CostGroup>,
    /// Dollars, with the working behind them.
    pub amount: Quantity,
    pub quantity: Option<Quantity>,
    /// The price of the day, where the book has one.
    pub price: Option<Dated>,
    pub taxed: bool,
    pub shares: Vec<(Section, Decimal)>,
    /// The smallest charge of the order it is a part of.
    pub least: Option<LeastCharge>,
}

/// The smallest charge of an item, and the order that it holds for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LeastCharge {
    pub item: ItemKey,
    /// The pour it is ordered for; what serves the whole job comes with the first.
    pub pour: usize,
    pub amount: At<Money>,
}

impl LeastCharge {
    fn of(need: &Need, first_pour: usize, book: &PriceBook) -> Option<Self> {
        let NeedItem::Item(key) = &need.item else {
            return None;
        };
        Some(Self {
            item: key.value.clone(),
            pour: need.placement.unwrap_or(first_pour),
            amount: book.items.get(&key.value)?.least_charge()?,
        })
    }
}

impl LineItem {
    /// A line with nothing but its amount; it has neither class nor price.
    pub(super) fn new(cause: Cause, side: Tier, amount: Quantity) -> Self {
        Self {
            title: cause.title(),
            cause,
            side,
            class: None,
            group: None,
            amount,
            quantity: None,
            price: None,
            taxed: false,
            shares: Vec::new(),
            least: None,
        }
    }

    pub fn money(&self) -> Money {
        self.amount.as_money()
    }

    /// The same quantity at another price; a lump has no price, and stays.
    pub fn at_price(&self, dated: &Dated) -> Self {
        let Some(quantity) = self.quantity.as_ref().filter(|_| self.price.is_some()) else {
            return self.clone();
        };
        Self {
            amount: extension(quantity, &each(dated)),
            price: Some(dated.clone()),
            ..self.clone()
        }
    }
}

fn extension(quantity: &Quantity, each: &Quantity) -> Quantity {
    Quantity::money(
        "quantity × price, to the cent",
        quantity.named(),
        of(quantity) * each,
    )
}

/// Joins every need with the price of its day; reports every price that is missing.
pub fn priced(
    needs: &[Need],
    first_pour: usize,
    at: Pricing<'_>,
    problems: &mut Problems,
) -> Vec<LineItem> {
    let mut priced = |need: &Need| -> Read<LineItem> {
        let prices = at.day(need.placement, first_pour);
        let mut line = line(need, at.book, prices, problems)?;
        line.least = LeastCharge::of(need, first_pour, at.book);
        Ok(line)
    };
    needs.iter().flat_map(&mut priced).collect()
}

pub(super) fn line(
    need: &Need,
    book: &PriceBook,
    prices: &Prices,
    problems: &mut Problems,
) -> Read<LineItem> {
    let name = need.quantity.name();
    let (class, group, title, taxed, price, each) = match &need.item {
        NeedItem::Lump { cost, class, group } => {
            let each = Quantity::given("cost", cost.value.into(), cost.place);
            let taxed = *class == Class::Material;
            let group = group.as_deref().map(|name| book.group(name));
            (*class, group, name.to_owned(), taxed, None, each)
        }
        NeedItem::Item(key) => {
            let (item, dated) = sold(key, need, book, prices, problems)?;
            let each = each(dated);
            (
                item.class,
                item.group.clone(),
                item.called(&key.value).to_owned(),
                item.is_taxed(),
                Some(dated.clone()),
                each,
            )
        }
    };
    Ok(LineItem {
        title,
        class: Some(class),
        group,
        quantity: Some(need.quantity.clone()),
        price,
        taxed,
        shares: need.shares.clone(),
        ..LineItem::new(
            Cause::Need(name.to_owned()),
            Tier::Direct,
            extension(&need.quantity, &each),
        )
    })
}

/// An item and its price of the day, if the book sells what is needed by its unit.
fn sold<'a>(
    key: &At<ItemKey>,
    need: &Need,
    book: &'a PriceBook,
    prices: &'a Prices,
    problems: &mut Problems,
) -> Read<(&'a Item, &'a Dated)> {
    let item = book.item(&key.value, key.place, problems)?;
    let unit = need.quantity.amount().unit;
    if unit != item.unit && !same_thing(unit, item.unit) {
        let message = format!(
            "this job needs `{}` in {}, and the book prices it in {}",
            key.value,
            unit.plural(),
            item.unit.plural()
        );
        let problem = Problem::new("wrong-unit", message).at(item.place);
        return Err(problems.push(
            problem.help("give the item the other unit, or name another item for this purpose"),
        ));
    }
    let Some(dated) = prices.get(&key.value) else {
        let first = item.dated.first().map(|dated| dated.from);
        let begins = first.map_or_else(String::new, |from| {
            format!("; its first price begins {from}")
        });
        let message = format!("`{}` has no price for {}{begins}", key.value, prices.day);
        let problem = Problem::new("missing-price", message).at(item.place);
        return Err(problems.push(problem.help("add a price that begins on or before that day")));
    };
    Ok((item, dated))
}

/// The price of one: as the book says it, or made of wage and burden.
fn each(dated: &Dated) -> Quantity {
    let dollars = Amount::new(dated.price.dollars(), Unit::Dollar);
    let Some(wage) = &dated.wage else {
        return Quantity::given("price", dollars, dated.place);
    };
    let base = Amount::new(wage.base.value.dollars(), Unit::Dollar);
    let base = Quantity::given("wage", base, wage.base.place);
    let burden = Quantity::said("burden", &wage.burden);
    Quantity::by(
        "wage and its burden",
        "price",
        Unit::Dollar,
        of(&base) * (number(1) + of(&burden)),
    )
}

/// Mesh is counted in sheets whether the yard says sheet, roll or piece.
fn same_thing(needed: Unit, priced: Unit) -> bool {
    matches!((needed, priced), (Unit::Sheet, Unit::Roll | Unit::Piece))
}

/// Reports what the price book's rules lack for this job.
pub fn missing(needs: &JobNeeds, book: &PriceBook, problems: &mut Problems) {
    for one in &needs.missing {
        let problem = match one {
            Missing::Role(role) => Problem::new(
                "no-item-for-purpose",
                format!(
                    "the price book does not say which item stands for `{}`",
                    role.name()
                ),
            )
            .help(format!(
                "under `use` write `{}: ` and an item's name, or `none` where you do not charge it",
                role.name()
            )),
            Missing::Rate(task) => Problem::new(
                "no-rate",
                format!("the price book has no rate for `{task}`"),
            )
            .help(format!(
                "{}under `rates` write, for example, `{task}: {}`",
                meant(task, book),
                rates_help(task)
            )),
            Missing::Disposal(material) => Problem::new(
                "no-disposal",
                format!("the price book does not say where {material} goes"),
            )
            .help(format!(
                "under `disposal` write `{material}: {{item: ..., loose: 1.5}}`"
            )),
            Missing::Supply => continue,
        };
        problems.push(problem.at(book.place));
    }
}

/// The finish that was probably meant, for the beginning of a help.
fn meant(task: &str, book: &PriceBook) -> String {
    let near = task
        .strip_prefix("finish ")
        .and_then(|finish| book.rules.nearest_finish(finish));
    near.map(|near| format!("did you mean the finish `{near}`? Else "))
        .unwrap_or_default()
}
