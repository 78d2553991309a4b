//! Borders: a band of another finish along the open edges.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::words::words;
use super::{BOOK, job, lot};
use crate::support::{BUSINESS, desk, value};

#[test]
fn a_border_runs_along_the_open_edges_and_no_corner_counts_twice() {
    #[track_caller]
    fn case(shape: &str, border: Decimal, inside: Decimal) {
        let text = job("").replace("size: 24 ft x 18 ft", shape);
        let text = text.replace(
            "joints: 9 ft",
            "joints: 9 ft, border: 12 in of washed pebbles",
        );
        let offer = desk(&text, BUSINESS, BOOK).offer();
        assert_eq!(value(&offer, "patio border"), border, "{shape}");
        assert_eq!(value(&offer, "patio inside its border"), inside, "{shape}");
        // Both are finished, each by its own rate.
        let (broom, pebbles) = (dec!(0.02), dec!(0.09));
        assert_eq!(value(&offer, "finish broom hours"), inside * broom);
        assert_eq!(
            value(&offer, "finish washed pebbles hours"),
            border * pebbles
        );
        let retarder = value(&offer, "patio border surface retarder");
        assert_eq!(retarder, border / dec!(200));
    }
    // The house is at the west: 24 + 24 + 18 ft, two corners; 23 × 16 ft are left inside.
    case("size: 24 ft x 18 ft", dec!(64), dec!(368));
    // An L, all open but the west: 12 + 6 + 12 + 12 + 24 ft; three corners outward, one inward.
    case(
        "outline: [east 12 ft, south 6 ft, east 12 ft, south 12 ft, west 24 ft, north 18 ft]",
        dec!(64),
        dec!(296),
    );
}

#[test]
fn a_walk_at_a_corner_takes_the_corner_from_the_border() {
    for end in ["north", "south"] {
        let text = job(", border: 12 in of washed pebbles").replace(", edges: {west: house}", "");
        let text = format!(
            "{text}  walk: {{base: none, size: 5 ft x 4 ft, beside: \"patio, west edge, 0 ft from {end} end\"}}\n"
        );
        let offer = desk(&text, BUSINESS, BOOK).offer();
        // 84 ft round, less 4 ft of walk, less the three corners that are left.
        assert_eq!(value(&offer, "patio border"), dec!(77), "{end}");
    }
}

#[test]
fn a_border_without_an_edge_is_asked_about() {
    let text = job(", border: 12 in of washed pebbles").replace(
        "edges: {west: house}",
        "edges: {north: house, east: house, south: house, west: house}",
    );
    let desk = desk(&text, BUSINESS, BOOK);
    let offer = desk.offer();
    let found = flatwork::inside::advice::advice(
        &desk.takeoff,
        desk.pricing(),
        &offer,
        desk.takeoff.head.quoted.unwrap(),
    );
    assert!(
        found.iter().any(|one| one.code == "border-nowhere"),
        "{found:?}"
    );
    assert!(!words(&desk).contains("border"));
    let edged = lot(", border: 12 in of washed pebbles");
    let said = words(&edged);
    assert!(
        said.contains(
            "broom, with a border of 12 in along the open edges: washed pebbles, rounded"
        ),
        "{said}"
    );
}
