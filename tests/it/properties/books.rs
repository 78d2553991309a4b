//! Every job can be bought in either supplier world, and no way of selling loses a yard.

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;

use super::jobs;
use super::workings::follow;
use crate::support::{BUSINESS, FAR_BANK, RIVER_ROAD, Shop, with};

#[test]
fn every_job_is_priced_with_either_book() {
    let (near, far) = (
        Shop::new(BUSINESS, RIVER_ROAD),
        Shop::new(BUSINESS, FAR_BANK),
    );
    let mut apart = 0;
    for seed in 0..60 {
        let text = jobs::job(seed).text();
        let (near, far) = (near.offer(&text), far.offer(&text));
        let measured = |offer: &Offer| -> Vec<Decimal> {
            let slabs = &offer.quoted().needs.slabs;
            slabs.iter().map(|slab| slab.concrete.value()).collect()
        };
        assert_eq!(measured(&near), measured(&far), "seed {seed}");
        let price = |offer: &Offer| offer.quoted().totals().price;
        apart += usize::from(price(&near) != price(&far));
    }
    assert!(50 < apart, "only {apart} prices differ");
}

/// Charges, hire and removal of the far book, with whatever way the job is placed by.
#[test]
fn a_pocket_calculator_follows_the_far_book_too() {
    const REMOVED: &str = "\nremove:\n  - drive: {size: 31 ft x 11 ft x 5 in, reinforced: yes, break: machine, saw cut: 11 ft}\n  - ring: {size: circle 13 ft, depth: 3 in, of: pavers}\n  - strip: {size: 9 ft x 4 ft, depth: 2 1/2 in, of: asphalt}\n  - soil: {size: 333 sq ft x 7 in, of: soil, stays: yes}\n";
    let shop = Shop::new(BUSINESS, FAR_BANK);
    for seed in 700..730 {
        let mut job = jobs::job(seed);
        job.rest.retain(|(key, _)| *key != "remove");
        let text = job
            .text()
            .replace(": pump\n", ": {by: pump, distance: 133 ft}\n");
        let text = format!(
            "{text}pour: 2026-11-21\nzone: hill road\nhold back: 2 cu yd\npermit: town permit{REMOVED}"
        );
        follow(seed, &text, &shop.offer(&text));
    }
}

/// What the far book names for a purpose, the near one names too: a takeoff fits both.
#[test]
fn both_books_know_the_same_names() {
    let (near, far) = (
        Shop::new(BUSINESS, RIVER_ROAD).book.rules,
        Shop::new(BUSINESS, FAR_BANK).book.rules,
    );
    assert!(near.mixes.keys().eq(far.mixes.keys()));
    assert!(near.bases.keys().eq(far.bases.keys()));
    assert!(near.bars.keys().eq(far.bars.keys()));
    assert!(near.mesh.keys().eq(far.mesh.keys()));
    assert!(near.fiber.keys().eq(far.fiber.keys()));
    for task in near.rates.0.keys() {
        assert!(far.rates.get(task).is_some(), "{task}");
    }
}

#[test]
fn loads_carry_the_order_however_they_are_filled() {
    let in_turn = with(FAR_BANK, &[("loads: evened", "loads: in turn")]);
    let (evened, in_turn) = (Shop::new(BUSINESS, FAR_BANK), Shop::new(BUSINESS, &in_turn));
    let mut evened_out = 0;
    for seed in 0..80 {
        let text = jobs::job(seed).text();
        let (evened, in_turn) = (evened.offer(&text), in_turn.offer(&text));
        let pairs = evened.quoted().needs.orders.iter();
        for (evened, in_turn) in pairs.zip(&in_turn.quoted().needs.orders) {
            let full = Decimal::from(10);
            for order in [evened, in_turn] {
                let carried: Decimal = order.loads.iter().sum();
                assert_eq!(carried, order.order.value(), "seed {seed}");
                assert!(order.loads.iter().all(|load| *load <= full), "seed {seed}");
            }
            assert_eq!(evened.loads.len(), in_turn.loads.len(), "seed {seed}");
            let least = |loads: &[Decimal]| loads.iter().min().copied();
            assert!(least(&in_turn.loads) <= least(&evened.loads), "seed {seed}");
            evened_out += usize::from(least(&in_turn.loads) < least(&evened.loads));
        }
    }
    assert!(10 < evened_out, "only {evened_out} orders were evened");
}

#[test]
fn more_waste_never_orders_less_or_sends_fewer_trucks() {
    let shops: Vec<Shop> = ["0%", "4%", "7%", "15%"]
        .iter()
        .map(|percent| {
            let allowance = format!("allowance: {percent}");
            Shop::new(&with(BUSINESS, &[("allowance: 7%", &allowance)]), FAR_BANK)
        })
        .collect();
    for seed in 0..40 {
        let text = jobs::job(seed).text();
        let orders: Vec<(Decimal, usize)> = shops
            .iter()
            .map(|shop| {
                let offer = shop.offer(&text);
                let orders = offer.quoted().needs.orders.iter();
                orders.fold((Decimal::ZERO, 0), |(yards, trucks), order| {
                    (yards + order.order.value(), trucks + order.loads.len())
                })
            })
            .collect();
        assert!(
            orders.is_sorted_by_key(|(yards, _)| *yards)
                && orders.is_sorted_by_key(|(_, trucks)| *trucks),
            "seed {seed}: {orders:?}\n{text}"
        );
    }
}
