//! More never costs less.

use flatwork::inside::costing::Offer;
use rust_decimal::Decimal;

use super::jobs::{self, Dice};
use crate::support::{BOOK, BUSINESS, Shop, listed, with};

fn ordered(offer: &Offer) -> Decimal {
    offer
        .quoted()
        .needs
        .orders
        .iter()
        .map(|order| order.order.value())
        .sum()
}

/// The job under every way of ordering, from small to large.
fn never_less(ways: &[(&str, &str)]) {
    let shops: Vec<Shop> = ways
        .iter()
        .map(|(old, new)| Shop::new(&with(BUSINESS, &[(*old, *new)]), BOOK))
        .collect();
    for seed in 0..40 {
        let text = jobs::job(seed).text();
        let orders: Vec<Decimal> = shops
            .iter()
            .map(|shop| ordered(&shop.offer(&text)))
            .collect();
        assert!(orders.is_sorted(), "seed {seed}: {orders:?}\n{text}");
    }
}

#[test]
fn more_waste_never_orders_less() {
    const OLD: &str = "allowance: 7%";
    const THICK: &str = "thickness allowance: 1/4 in";
    never_less(&[
        (OLD, "allowance: 0%"),
        (OLD, OLD),
        (OLD, "allowance: 7.5%"),
        (OLD, "allowance: 15%"),
    ]);
    never_less(&[
        (THICK, "thickness allowance: 0 in"),
        (THICK, THICK),
        (THICK, "thickness allowance: 1/2 in"),
    ]);
}

/// The order and the bill for the mix itself; short load fees may well fall with a fuller truck.
#[test]
fn thicker_never_orders_less() {
    let shop = Shop::new(BUSINESS, BOOK);
    for seed in 0..120 {
        let mut job = jobs::job(seed);
        let thin = shop.offer(&job.text());
        let mut dice = Dice::new(seed + 1000);
        let which =
            usize::try_from(dice.between(0, job.slabs.len() as u64 - 1)).expect("few slabs");
        job.slabs[which].thickness += dice.between(1, 16);
        let thick = shop.offer(&job.text());
        assert!(
            ordered(&thin) <= ordered(&thick),
            "seed {seed}\n{}",
            job.text()
        );
        let net = |offer: &Offer| offer.quoted().needs.slabs[which].concrete.value();
        assert!(net(&thin) < net(&thick), "seed {seed}\n{}", job.text());
    }
}

/// A strip is never more than the slab it lies in, and never makes the concrete less.
#[test]
fn a_thickened_edge_only_adds() {
    let shop = Shop::new(BUSINESS, BOOK);
    let mut found = 0;
    for seed in 0..120 {
        let mut job = jobs::job(seed);
        let with = shop.offer(&job.text());
        for (i, slab) in job.slabs.iter_mut().enumerate() {
            let edge = &with.quoted().needs.slabs[i];
            if edge.thickened.is_none() {
                continue;
            }
            found += 1;
            slab.thickened = None;
            let strip = listed(edge, "thickened strip").next().expect("on the list");
            assert!(Decimal::ZERO <= strip.value(), "seed {seed}");
            assert!(strip.value() < edge.area.value(), "seed {seed}");
        }
        let without = shop.offer(&job.text());
        let net = |offer: &Offer| -> Vec<Decimal> {
            let slabs = offer.quoted().needs.slabs.iter();
            slabs.map(|slab| slab.concrete.value()).collect()
        };
        for (with, without) in net(&with).iter().zip(net(&without)) {
            assert!(without <= *with, "seed {seed}");
        }
    }
    assert!(20 < found, "only {found} slabs had thickened edges");
}

/// Every price of the book in turn, raised by a tenth and a cent.
#[test]
fn a_dearer_item_never_lowers_the_cost() {
    let shop = Shop::new(BUSINESS, BOOK);
    let plain: Vec<(String, Offer)> = (0..6)
        .map(|seed| jobs::job(seed).text())
        .map(|text| (text.clone(), shop.offer(&text)))
        .collect();
    let mut dearer_somewhere = 0;
    for (i, line) in BOOK
        .lines()
        .filter(|line| line.contains("    prices: {2026-03-01: "))
        .enumerate()
    {
        let number = line.split("2026-03-01: ").nth(1).expect("the line has it");
        let number = &number[..number.find([',', '}']).expect("a map ends")];
        let old: Decimal = number.parse().expect("a price");
        let new = (old * Decimal::new(11, 1) + Decimal::new(1, 2)).round_dp(2);
        // Items may share a price: the item is found by all text before its line.
        let at = BOOK
            .match_indices("    prices: {2026-03-01: ")
            .nth(i)
            .expect("the same line")
            .0;
        let raised = format!(
            "{}{}",
            &BOOK[..at],
            with(&BOOK[at..], &[(number, &new.to_string())])
        );
        let dear = Shop::new(BUSINESS, &raised);
        for (text, before) in &plain {
            let after = dear.offer(text);
            for (choice, priced) in &before.by_choice {
                let (before, after) = (priced.totals(), after.by_choice[choice].totals());
                assert!(before.direct <= after.direct, "{line}\n{text}");
                assert!(before.price <= after.price, "{line}\n{text}");
                dearer_somewhere += usize::from(before.direct < after.direct);
            }
        }
    }
    assert!(
        100 < dearer_somewhere,
        "only {dearer_somewhere} rises were felt"
    );
}

/// Every item of the book with its unit.
fn items() -> Vec<(&'static str, &'static str)> {
    let (_, items) = BOOK.split_once("\nitems:\n").expect("a book has items");
    let mut name = "";
    let mut found = Vec::new();
    for line in items
        .lines()
        .take_while(|line| line.is_empty() || line.starts_with([' ', '#']))
    {
        if let Some(unit) = line.strip_prefix("    unit: ") {
            found.push((name, unit.trim()));
        } else if let Some(key) = line
            .strip_prefix("  ")
            .filter(|line| !line.starts_with([' ', '#']))
        {
            name = key.trim_end_matches(':');
        }
    }
    found
}

/// Also one that a rule buys too: what was rounded up may be enough for both, and never less.
#[test]
fn an_item_added_by_hand_never_lowers_the_cost() {
    let shop = Shop::new(BUSINESS, BOOK);
    let items = items();
    assert!(10 < items.len());
    let mut dearer = 0;
    for seed in 0..6 {
        let text = jobs::job(seed).text();
        if text.contains("options:") {
            continue;
        }
        for (name, unit) in &items {
            let offer = shop.offer(&format!(
                "{text}\noptions:\n  - More: {{add: [{name}: 3 {unit}]}}\n"
            ));
            let before = offer.quoted().totals();
            for priced in offer.by_choice.values() {
                let after = priced.totals();
                assert!(before.direct <= after.direct, "{name}\n{text}");
                dearer += usize::from(before.direct < after.direct);
            }
        }
    }
    assert!(items.len() < dearer, "only {dearer} cost anything");
}
