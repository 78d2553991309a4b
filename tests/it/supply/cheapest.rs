//! Orders placed the cheapest way found: `buy: cheapest`.

use flatwork::inside::costing::Offer;
use rust_decimal_macros::dec;

use super::bought;
use crate::support::{BUSINESS, RIVER_ROAD, desk, value, with};

const CHEAPEST: (&str, &str) = ("order:", "order:\n  buy: cheapest");

fn offer(size: &str, more: &str, business: &[(&str, &str)], book: &[(&str, &str)]) -> Offer {
    let slab = format!("slabs:\n  patio: {{size: {size}, edges: {{north: house}}}}");
    let job =
        format!("customer: Ira Sample\nquoted: 2026-04-01\npour: 2026-05-01\n{slab}\n{more}\n");
    desk(&job, &with(BUSINESS, business), &with(RIVER_ROAD, book)).offer()
}

const FLAT: [(&str, &str); 3] = [
    ("charge: each yard", "charge: flat"),
    ("each yard missing\n    unit: cu yd", "flat\n    unit: load"),
    ("2026-03-01: 60.00", "2026-03-01: 120.00"),
];

#[test]
fn a_quarter_yard_more_saves_the_short_load() {
    let plain = offer("17 ft x 16 ft", "", &[], &FLAT);
    let cheap = offer("17 ft x 16 ft", "", &[CHEAPEST], &FLAT);
    assert_eq!(bought(&plain, "exterior order"), Some(dec!(3.75)));
    assert_eq!(bought(&cheap, "exterior order"), Some(dec!(4)));
    assert_eq!(value(&cheap, "exterior order needed"), dec!(3.75));
    let direct = |offer: &Offer| offer.quoted().totals().direct.dollars();
    assert_eq!(direct(&plain) - direct(&cheap), dec!(75.50));
    // What is left over is not placed.
    let hours = |offer: &Offer| value(offer, "place by chute hours");
    assert_eq!(hours(&plain), hours(&cheap));
    let why = cheap.quoted().needs.orders[0].otherwise.clone();
    assert_eq!(
        why.as_deref(),
        Some("0.25 cu yd more than is needed: saves $75.50")
    );
}

#[test]
fn evened_trucks_carry_the_same() {
    let cheap = offer("36 ft x 20 ft 10 in", "", &[CHEAPEST], &[]);
    let order = &cheap.quoted().needs.orders[0];
    assert_eq!(order.loads, [dec!(5), dec!(5)]);
    assert_eq!(order.order.value(), dec!(10));
    assert_eq!(bought(&cheap, "exterior order short"), None);
    // The plant whose trucks are evened fills them in turn where that is cheaper, and this is not.
    let own = offer(
        "36 ft x 20 ft 10 in",
        "",
        &[CHEAPEST],
        &[("truck: 9 cu yd", "truck: 9 cu yd\n  loads: evened")],
    );
    assert_eq!(own.quoted().needs.orders[0].otherwise, None);
}

#[test]
fn what_saves_nothing_or_is_set_stays_as_it_is() {
    let same = |size: &str, more: &str, book: &[(&str, &str)]| {
        let [plain, cheap] =
            [&[][..], &[CHEAPEST]].map(|business| offer(size, more, business, book));
        assert_eq!(
            plain.quoted().totals(),
            cheap.quoted().totals(),
            "{size} {more}"
        );
    };
    same("17 ft x 16 ft", "", &[]);
    same("24 ft x 16 ft", "", &FLAT);
    let set = "set: {exterior order: {to: 3.75, because: measured again}}";
    same("17 ft x 16 ft", set, &FLAT);
}
