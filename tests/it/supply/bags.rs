//! Concrete by the bag: whole bags, mixed by hand, and no truck.

use flatwork::inside::costing::Offer;
use rust_decimal_macros::dec;

use super::bought;
use crate::support::{BUSINESS, RIVER_ROAD, desk, value, with};

const BAGS: [(&str, &str); 3] = [
    (
        "items:\n",
        "items:\n  sack: {unit: bag, class: material, prices: {2026-03-01: 6.20}}\n",
    ),
    (
        "mixes:\n",
        "mixes:\n  bags: {item: sack, strength: 4000 psi, air: 6%, yield: 0.6 cu ft}\n",
    ),
    ("rates:", "rates:\n  mix bags: 0.06 hours per bag"),
];

fn offer(slabs: &str, more: &str) -> Offer {
    let job = format!(
        "customer: Ira Sample\nquoted: 2026-04-01\npour: 2026-05-02\nslabs:\n{slabs}\n{more}\n"
    );
    desk(&job, BUSINESS, &with(RIVER_ROAD, &BAGS)).offer()
}

const PAD: &str = "  patio: {size: 4 ft x 4 ft, edges: {north: house}, mix: bags, bars: none}";

#[test]
fn a_pad_is_whole_bags_and_hours_of_mixing() {
    // 0.1975 cu yd and its percent, and no least: another bag is opened.
    let pad = offer(PAD, "");
    assert_eq!(bought(&pad, "bags order bags"), Some(dec!(10)));
    assert_eq!(bought(&pad, "bags order"), None);
    assert_eq!(value(&pad, "mix bags hours"), dec!(0.6));
    let order = &pad.quoted().needs.orders[0];
    assert!(order.loads.is_empty());
    // It is a Saturday, and the plant is not asked.
    for what in ["loads", "short", "standing", "Saturday"] {
        assert_eq!(bought(&pad, &format!("bags order {what}")), None, "{what}");
    }
}

#[test]
fn bags_beside_a_truck_leave_it_as_it_is() {
    let alone = "  walk: {size: 20 ft x 20 ft, edges: {north: house}}";
    let held = "hold back: 1 cu yd\naccess: pump";
    let (one, both) = (offer(alone, held), offer(&format!("{PAD}\n{alone}"), held));
    for what in ["", " loads", " short", " Saturday"] {
        let name = format!("exterior order{what}");
        assert_eq!(bought(&one, &name), bought(&both, &name), "{name}");
    }
    assert_eq!(
        value(&one, "exterior order on call"),
        value(&both, "exterior order on call")
    );
    assert_eq!(bought(&both, "bags order bags"), Some(dec!(10)));
}

#[test]
fn hours_of_bags_are_those_of_all_slabs_together() {
    let three = ["east", "mid", "west"].map(|name| {
        format!("  {name}: {{kind: patio, size: 7 ft x 3 ft, edges: {{north: house}}, mix: bags, bars: none}}")
    });
    let three = offer(&three.join("\n"), "");
    let bags = bought(&three, "bags order bags").unwrap();
    assert_eq!(value(&three, "mix bags work"), bags);
    assert_eq!(value(&three, "mix bags hours"), bags * dec!(0.06));
}
