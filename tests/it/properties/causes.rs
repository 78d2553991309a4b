//! Causes of a difference between two estimates add up to it, however prices and rules move.

use flatwork::inside::costing::{
    Bought, CauseChange, Prices, Pricing, Totals, books, estimate, priced,
};
use flatwork::inside::reading::Problems;
use flatwork::inside::values::{Money, UnitPrice};
use rust_decimal::Decimal;

use super::jobs::{self, Dice};
use crate::support::{BUSINESS, FAR_BANK, RIVER_ROAD, Shop};

/// Jobs, and for each so many books: 5,000 cases.
const JOBS: u64 = 100;
const BOOKS: u64 = 50;

/// Up to twice the price, or down to a tenth, of some items.
fn moved(days: &[Prices], shop: &Shop, dice: &mut Dice) -> Vec<Prices> {
    let mut days = days.to_vec();
    for item in shop.book.items.keys() {
        if !dice.one_in(3) {
            continue;
        }
        let share = Decimal::new(i64::try_from(dice.between(10, 200)).unwrap(), 2);
        for day in &mut days {
            if let Some(dated) = day.get(item) {
                let price = UnitPrice::new(dated.price.dollars() * share);
                *day = day.with(item, price);
            }
        }
    }
    days
}

fn sum<'a>(changes: impl IntoIterator<Item = &'a CauseChange>) -> Money {
    changes.into_iter().map(CauseChange::by).sum()
}

#[test]
fn causes_add_up_for_any_prices_and_either_way_of_selling() {
    let (near, far) = (
        Shop::new(BUSINESS, RIVER_ROAD),
        Shop::new(BUSINESS, FAR_BANK),
    );
    let policy = &near.business.price;
    let (mut cases, mut by_prices, mut by_rules) = (0, 0, 0);
    for seed in 0..JOBS {
        let text = jobs::job(9_000 + seed).text();
        let old = near.offer(&text);
        let old = old.quoted().bought();
        let before = Totals::of(old.lines);
        let elsewhere = far.offer(&text);
        let mut dice = Dice::new(seed);
        for case in 0..BOOKS {
            // Every tenth case buys as the other supplier sells.
            let (shop, needs) = if case % 10 == 9 {
                (&far, elsewhere.quoted().bought())
            } else {
                (&near, old)
            };
            let (_, days) = shop.takeoff(&text);
            let days = moved(&days, shop, &mut dice);
            let mut problems = Problems::default();
            let at = Pricing {
                book: &shop.book,
                business: &near.business,
                days: &days,
            };
            let lines = priced(needs.needs, needs.first_pour, at, &mut problems);
            let lines = estimate(
                lines,
                policy,
                flatwork::inside::costing::PriceSaid::default(),
            );
            let new = Bought {
                lines: &lines,
                ..needs
            };
            let after = Totals::of(&lines);
            let why = books(
                old,
                new,
                at,
                flatwork::inside::costing::PriceSaid::default(),
            );
            assert_eq!(
                sum(&why.prices) + sum(&why.rules),
                after.direct - before.direct,
                "seed {seed}, case {case}"
            );
            assert_eq!(sum(why.all()), after.total - before.total, "seed {seed}");
            by_prices += usize::from(!why.prices.is_empty());
            by_rules += usize::from(!why.rules.is_empty());
            cases += 1;
        }
    }
    assert_eq!(cases, 5_000);
    assert!(
        4_900 < by_prices && by_rules == 500,
        "{by_prices} {by_rules}"
    );
}
