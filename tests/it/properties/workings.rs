//! Every computed quantity can be followed with a pocket calculator.

use super::calculator::{printed, typed};
use super::{each, jobs};
use crate::support::{BOOK, BUSINESS, Shop, reachable, with};
use flatwork::inside::costing::Offer;
use flatwork::inside::trade::Working;

/// Margin instead of markup, both other taxes, a difficult site, a third of a yard, short loads
/// by the order: the ways the demo does not go.
#[test]
fn with_another_firm_too() {
    let business = with(
        BUSINESS,
        &[
            ("profit: markup 25%", "profit: margin 22.5%"),
            (
                "tax: {on: sale, rate: 6%, name: sales tax}",
                "tax: [{on: materials, rate: 7.25%, name: sales tax}, {on: purchases, rate: 5.5%, name: use tax}]",
            ),
            ("people: 3", "people: 2\n  difficulty: 117%"),
            ("minimum job: 1500.00", "minimum job: 9000.00"),
        ],
    );
    let book = with(
        BOOK,
        &[
            ("sold in: 1/4 cu yd", "sold in: 1/3 cu yd"),
            ("counted: by truck", "counted: by order"),
            ("under: 4 cu yd", "under: 7 cu yd"),
        ],
    );
    let shop = Shop::new(&business, &book);
    for seed in 500..540 {
        let job = jobs::job(seed).text();
        follow(seed, &job, &shop.offer(&job));
    }
}

/// Finishes, colors, sealers, and visits after the pour.
#[test]
fn with_every_surface_too() {
    let book = include_str!("../../golden/takeoff/stamped-and-sealed/input/book.yaml");
    let job = include_str!("../../golden/takeoff/stamped-and-sealed/input/job.yaml");
    let business = with(BUSINESS, &[("finish: trowel", "finish: broom")]);
    let shop = Shop::new(&business, book);
    let job = job.replace(
        "kind: slab",
        "kind: walk, base: none, border: 8 in of broom",
    );
    follow(0, &job, &shop.offer(&job));
    let two = with(
        &job,
        &[(
            "pour: 2026-06-15",
            "pour: [{day: 2026-06-15, slabs: [patio, walk]}, {day: 2026-07-06, slabs: [landing, shed slab]}]\ndifficulty: 113%",
        )],
    );
    follow(1, &two, &shop.offer(&two));
}

#[test]
fn a_pocket_calculator_comes_to_the_printed_amount() {
    each(0..60, |seed, job, offer| follow(seed, &job.text(), offer));
}

pub(super) fn follow(seed: u64, job: &str, offer: &Offer) {
    let mut followed = 0;
    for quantity in reachable(offer) {
        if !matches!(quantity.working(), Working::Rule { .. }) {
            continue;
        }
        let place = || {
            let (name, amount) = (quantity.name(), quantity.amount());
            format!(
                "seed {seed}: `{name}` is {amount} by {}\n{job}",
                quantity.shown()
            )
        };
        let range = typed(&quantity).unwrap_or_else(|problem| panic!("{problem}: {}", place()));
        let slack = printed(quantity.amount());
        let fits = range.low - slack <= quantity.value() && quantity.value() <= range.high + slack;
        assert!(fits, "typed in it gives {range:?}: {}", place());
        followed += 1;
    }
    assert!(20 < followed, "only {followed} were computed");
}
