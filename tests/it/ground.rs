//! Base and digging where they lie: past the forms, under thick edges and steps.

use rust_decimal_macros::dec;

use crate::reference::concrete::places;
use crate::support::{BOOK, BUSINESS, desk, value, with};
use flatwork::inside::costing::Offer;

/// 30 × 20 ft, 5 in thick on 6 in, along three sides 12 in wide and 12 in deep; two steps of 12 in below a landing.
const JOB: &str = "customer: Ira Sample
slabs:
  floor: {kind: patio, size: 30 ft x 20 ft, thickness: 5 in, base: 6 in of crushed stone, edges: {north: house}, thickened: \"all open, 12 in wide, 12 in deep\"}
  landing: {kind: patio, size: 6 ft x 5 ft, base: 4 in of crushed stone, steps: \"3 risers of 7 in, 12 in treads, south edge, base 4 in of crushed stone, 2 no. 3\"}
remove:
  - ground: {under: [floor, landing], depth: 10 in, of: soil}
";

fn offer(settings: &str) -> Offer {
    let order = format!("order:\n{settings}");
    desk(JOB, &with(BUSINESS, &[("order:\n", &order)]), BOOK).offer()
}

/// Worked out by hand: the strip is 30 + 20 + 20 ft less two corners, 68 sq ft.
#[test]
fn base_and_digging_lie_where_the_owner_says() {
    #[track_caller]
    fn case(settings: &str, floor: &str, landing: &str, area: &str, dug: &str) {
        let offer = offer(settings);
        let four = |name: &str| places(value(&offer, name), 4).normalize().to_string();
        assert_eq!(four("floor base"), floor, "{settings}");
        assert_eq!(four("landing base"), landing, "{settings}");
        assert_eq!(four("ground area"), area, "{settings}");
        assert_eq!(four("ground in place"), dug, "{settings}");
        // Two treads of 12 in, 6 ft wide, 4 in deep.
        assert_eq!(
            places(value(&offer, "landing base of steps"), 4),
            dec!(0.1481)
        );
    }
    // (600 − 68) × 6 ÷ 324; 30 × 4 ÷ 324. Dug 630 × 10 ÷ 324, the edge an inch deeper, the steps' base.
    case("", "9.8519", "0.3704", "630", "19.8025");
    // Stone under the edges: 600 × 6 ÷ 324; the edge is dug 7 in deeper than the slab's base.
    case(
        "  base under edges: yes\n",
        "11.1111",
        "0.3704",
        "630",
        "21.0617",
    );
    // Past the landing 16 ft × 6 in and two corners: 8.5 sq ft; the floor's thick edges stop it.
    case(
        "  base past forms: 6 in\n",
        "9.8519",
        "0.4753",
        "630",
        "19.8025",
    );
    // With both, past the floor too: 70 ft × 6 in and two corners: 35.5 sq ft.
    let both = "  base past forms: 6 in\n  base under edges: yes\n";
    case(both, "11.7685", "0.4753", "630", "21.0617");
    // Room of a foot: 72 and 18 sq ft more.
    case(
        "  dig past forms: 12 in\n",
        "9.8519",
        "0.3704",
        "720",
        "22.5802",
    );
}

/// Two bars in each of two steps, 6 ft less cover at both ends.
#[test]
fn bars_lie_in_each_step() {
    let offer = offer("");
    let feet = value(&offer, "landing step bars");
    assert_eq!(places(feet, 4), dec!(22.6667));
}

/// A taper comes up evenly: below the base it runs as far in as it is still deep there.
#[test]
fn a_tapered_edge_stands_in_the_base() {
    // 10 ft along one side, 12 in wide and 12 in deep, tapered 14 in, under 5 in of slab on 3 in of base.
    let job = "customer: Ira Sample
slabs:
  floor: {kind: patio, size: 10 ft x 10 ft, thickness: 5 in, base: 3 in of crushed stone, thickened: \"north, 12 in wide, 12 in deep, taper 14 in\"}
";
    let offer = desk(job, BUSINESS, BOOK).offer();
    // Cross section of the edge in the base: 12 × 3 in, and of the taper 14 × 7 ÷ 2 less 8 × 4 ÷ 2 in.
    let stands = dec!(10) * (dec!(36) + dec!(49) - dec!(16)) / dec!(144) / dec!(27);
    let whole = dec!(100) * dec!(3) / dec!(324);
    assert_eq!(
        places(value(&offer, "floor base"), 6),
        places(whole - stands, 6)
    );
}
