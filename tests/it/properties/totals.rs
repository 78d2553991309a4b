//! Everything adds up, to the cent.

use flatwork::inside::costing::{Cause, LineItem, Tier, schedule, sections};
use flatwork::inside::input::business::Installment;
use flatwork::inside::values::{Money, Percent, rounding};
use rust_decimal::Decimal;

use super::jobs::Dice;
use super::{SHOP, each};
use crate::support::Shop;

fn added(lines: &[LineItem], sides: &[Tier]) -> i64 {
    let ours = lines.iter().filter(|line| sides.contains(&line.side));
    ours.map(|line| line.amount.value() * Decimal::ONE_HUNDRED)
        .map(|cents| {
            assert_eq!(cents.fract(), Decimal::ZERO, "a line of whole cents");
            i64::try_from(cents).expect("a small job")
        })
        .sum()
}

/// Every combination; the sums are done here again, from the lines' own decimals.
#[test]
fn lines_add_up_to_every_total() {
    each(0..200, |seed, _, offer| {
        for (choice, priced) in &offer.by_choice {
            let (lines, totals) = (&priced.lines, priced.totals());
            let found =
                [totals.direct, totals.cost, totals.price, totals.total].map(Money::as_cents);
            let sides = [Tier::Direct, Tier::Indirect, Tier::Price, Tier::Tax];
            let wanted: [i64; 4] = std::array::from_fn(|i| added(lines, &sides[..=i]));
            assert_eq!(found, wanted, "seed {seed}, {choice:?}");
            assert_eq!(totals.tax.as_cents(), added(lines, &[Tier::Tax]));
            assert!(Decimal::ZERO < totals.direct.dollars());
        }
    });
}

/// The policy of the business, figured again from its sums: no line is missing or doubled.
#[test]
fn the_price_follows_the_policy() {
    let policy = &SHOP.with(|shop| shop.business.price.clone());
    each(0..100, |seed, _, offer| {
        let lines = &offer.quoted().lines;
        let totals = offer.quoted().totals();
        let one = |cause: &Cause| -> Money {
            lines
                .iter()
                .filter(|line| line.cause == *cause)
                .map(LineItem::money)
                .sum()
        };
        let share =
            |of: Money, percent: Percent| rounding::to_cents(of.dollars() * percent.fraction());
        assert_eq!(
            one(&Cause::Overhead),
            share(totals.direct, policy.overhead.value),
            "seed {seed}"
        );
        assert_eq!(
            one(&Cause::Contingency),
            share(totals.direct, policy.contingency.value.percent),
            "seed {seed}"
        );
        // The demo adds 25 % to cost.
        assert_eq!(
            one(&Cause::Profit),
            rounding::to_cents(totals.cost.dollars() / Decimal::from(4)),
            "seed {seed}"
        );
        assert_eq!(
            totals.price.as_cents() % policy.round_up_to.value.as_cents(),
            0,
            "seed {seed}"
        );
        assert!(policy.minimum.value <= totals.price, "seed {seed}");
        assert!(
            one(&Cause::Rounding) < policy.round_up_to.value,
            "seed {seed}"
        );
        assert_eq!(
            totals.tax,
            share(totals.price, policy.taxes[0].rate.value),
            "seed {seed}"
        );
    });
}

#[test]
fn sections_add_up_to_the_price() {
    each(0..100, |seed, job, offer| {
        for priced in offer.by_choice.values() {
            let parts = sections(&priced.lines);
            assert_eq!(
                parts.iter().map(|part| part.price).sum::<Money>(),
                priced.totals().price,
                "seed {seed}"
            );
            assert!(
                job.slabs.len() <= parts.len(),
                "every slab has a price of its own"
            );
            assert!(
                parts.iter().all(|part| Money::ZERO < part.price),
                "seed {seed}"
            );
        }
    });
}

fn payments(text: &str) -> Vec<Installment> {
    let business = crate::support::BUSINESS;
    let start = business.find("payments:").expect("the demo has payments");
    let end = business.find("kinds:").expect("the demo has kinds");
    let business = format!(
        "{}payments:\n{text}\n{}",
        &business[..start],
        &business[end..]
    );
    Shop::new(&business, crate::support::BOOK).business.payments
}

/// Percents, thirds, amounts and a rest, on a few hundred totals to the odd cent.
#[test]
fn payments_add_up_to_the_total() {
    let ways = [
        "  - One: 10%\n  - Two: 40%\n  - Three: 40%\n  - Four: rest",
        "  - One: 33.3%\n  - Two: 33.3%\n  - Three: 33.4%",
        "  - One: 1/3\n  - Two: 1/3\n  - Three: rest",
        "  - One: 500.00\n  - Two: 1/7\n  - Three: rest",
        "  - One: 14.29%\n  - Two: 14.29%\n  - Three: 14.29%\n  - Four: 57.13%",
    ]
    .map(payments);
    let mut dice = Dice::new(7);
    for _ in 0..300 {
        let total =
            Money::cents(i64::try_from(dice.between(150_000, 9_999_999)).expect("a small job"));
        for way in &ways {
            let parts = schedule(total, way);
            assert_eq!(parts.len(), way.len());
            assert_eq!(parts.iter().copied().sum::<Money>(), total);
            assert!(
                parts.iter().all(|part| Money::ZERO < *part),
                "{parts:?} of {total}"
            );
        }
    }
}
