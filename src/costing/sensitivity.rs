//! What a rise of one item does to the cost, to the price, and to the margin if the price is held.
//!
//! Nothing is derived: the item gets its other price and the whole estimate is made again.

use rust_decimal::Decimal;

use super::bought::Bought;
use super::estimate::{PriceSaid, estimate};
use super::lines::priced;
use super::prices::Prices;
use super::pricing::Pricing;
use super::totals::Totals;
use crate::input::book::ItemKey;
use crate::reading::{At, Problems};
use crate::trade::order::NeedItem;
use crate::values::{Money, Percent, UnitPrice};

/// An estimate, and everything it was made of.
#[derive(Clone, Copy, Debug)]
pub struct Estimated<'a> {
    pub bought: Bought<'a>,
    pub at: Pricing<'a>,
    pub said: PriceSaid<'a>,
}

/// One item of the job, or several together.
#[derive(Clone, Debug)]
pub struct Sensitivity {
    pub items: Vec<ItemKey>,
    pub rises: Vec<Rise>,
    /// How far its price can go alone, the price of the job held; only for a single item.
    pub room: Option<Room>,
}

/// What comes of one rise.
#[derive(Clone, Copy, Debug)]
pub struct Rise {
    /// What the job costs more.
    pub more: Money,
    /// Everything priced again by the same policy.
    pub repriced: Totals,
    /// The same cost, and the price as it was before.
    pub held: Totals,
}

/// How far a price can rise before the margin falls below its floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Room {
    /// Up to this price, in percent above today's; one price step more is below the floor.
    UpTo { price: UnitPrice, percent: Percent },
    /// Over ten times today's price.
    Far,
    /// The margin is below its floor already.
    None,
}

/// Every item of the job by itself, the most costly first.
pub fn sensitivity(asked: Estimated<'_>, percents: &[Percent]) -> Vec<Sensitivity> {
    let mut found: Vec<Sensitivity> = items(asked)
        .into_iter()
        .map(|item| Sensitivity {
            room: Some(room(
                asked,
                &item,
                asked.at.business.price.margin_floor.value,
            )),
            ..together(asked, vec![item], percents)
        })
        .collect();
    found.sort_by_key(|one| std::cmp::Reverse(one.rises.last().map(|rise| rise.more)));
    found
}

/// Several items that rise at once, all by the same percentage.
pub fn together(asked: Estimated<'_>, items: Vec<ItemKey>, percents: &[Percent]) -> Sensitivity {
    let before = Totals::of(asked.bought.lines);
    let rises = percents
        .iter()
        .map(|percent| {
            let factor = Decimal::ONE + percent.fraction();
            let days = moved(asked, &items, |price| price * factor);
            let repriced = again(asked, &days, asked.said);
            Rise {
                more: repriced.cost - before.cost,
                repriced,
                held: again(asked, &days, fixed(&held(asked))),
            }
        })
        .collect();
    Sensitivity {
        items,
        rises,
        room: None,
    }
}

/// The items this job buys, each once.
fn items(asked: Estimated<'_>) -> Vec<ItemKey> {
    let mut found: Vec<ItemKey> = Vec::new();
    for need in asked.bought.needs {
        if let NeedItem::Item(key) = &need.item
            && !found.contains(&key.value)
        {
            found.push(key.value.clone());
        }
    }
    found
}

/// The price of the job as it is now, as if the owner had fixed it.
fn held(asked: Estimated<'_>) -> At<Money> {
    At {
        value: Totals::of(asked.bought.lines).price,
        place: asked.at.business.price.round_up_to.place,
    }
}

/// With its discounts in it.
fn fixed(price: &At<Money>) -> PriceSaid<'_> {
    PriceSaid {
        fixed: Some(price),
        discounts: &[],
    }
}

/// The prices of all days with some items moved.
fn moved(asked: Estimated<'_>, items: &[ItemKey], to: impl Fn(Decimal) -> Decimal) -> Vec<Prices> {
    let day = |prices: &Prices| {
        items.iter().fold(prices.clone(), |prices, item| {
            let price = prices.get(item).map(|dated| to(dated.price.dollars()));
            price.map_or_else(
                || prices.clone(),
                |price| prices.with(item, UnitPrice::new(price)),
            )
        })
    };
    asked.at.days.iter().map(day).collect()
}

/// The whole estimate again, at other prices.
fn again(asked: Estimated<'_>, days: &[Prices], said: PriceSaid<'_>) -> Totals {
    // Every price was there a moment ago, so nothing can be missing now.
    let (bought, at) = (asked.bought, Pricing { days, ..asked.at });
    let mut problems = Problems::default();
    let lines = priced(bought.needs, bought.first_pour, at, &mut problems);
    Totals::of(&estimate(lines, &at.business.price, said))
}

/// Bisection over whole price steps: cost never falls when a price rises, so the last step
/// at or above the floor and the first one below it stand side by side.
pub fn room(asked: Estimated<'_>, item: &ItemKey, floor: Percent) -> Room {
    const FAR: u64 = 9;
    let of_day = |day: &Prices| day.get(item).map(|dated| dated.price.dollars());
    let now: Vec<Decimal> = asked.at.days.iter().filter_map(of_day).collect();
    let Some(price) = now.first().copied().filter(|price| !price.is_zero()) else {
        return Room::Far;
    };
    let places = now.iter().map(|price| price.normalize().scale()).max();
    let step = Decimal::new(1, places.unwrap_or(0).max(2));
    let one = std::slice::from_ref(item);
    let held = held(asked);
    let stands = |steps: Decimal| {
        let days = moved(asked, one, |price| price + steps * step);
        let margin = again(asked, &days, fixed(&held)).margin();
        margin.is_some_and(|margin| floor.number() <= margin)
    };
    if !stands(Decimal::ZERO) {
        return Room::None;
    }
    let most = price * Decimal::from(FAR) / step;
    if stands(most) {
        return Room::Far;
    }
    let (mut good, mut bad) = (Decimal::ZERO, most);
    while Decimal::ONE < bad - good {
        let middle = crate::values::rounding::to_places((good + bad) / Decimal::TWO, 0);
        if stands(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Room::UpTo {
        price: UnitPrice::new(price + good * step),
        percent: Percent::new(good * step / price * Decimal::ONE_HUNDRED),
    }
}
