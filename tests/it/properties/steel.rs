//! Steel by rules the demo does not use: every working still comes to the printed amount.

use super::workings::follow;
use crate::support::{BOOK, BUSINESS, Shop, reachable, value, with};
use rust_decimal::Decimal;

/// Class B laps, a roll of mesh, wire for ties, dowels and ties with adhesive.
fn shop() -> Shop {
    let book = with(
        BOOK,
        &[
            (
                "items:\n",
                "items:\n  pin: {unit: piece, class: material, prices: {2026-03-01: 2.00}}\n  epoxy: {unit: piece, class: material, prices: {2026-03-01: 25.00}}\n  wire: {unit: lb, class: material, prices: {2026-03-01: 2.10}}\n",
            ),
            (
                "\nfiber:\n",
                "\ndowels:\n  smooth: {item: pin, bar: 1/2 in smooth, cap: pin}\n  ties: {item: pin, bar: no. 4, depth: 6 in, adhesive: epoxy}\n\nfiber:\n",
            ),
            ("  dig: ", "  drill holes: 0.2 hours per piece\n  dig: "),
            ("  chairs: chair\n", "  chairs: chair\n  tie wire: wire\n"),
            ("no. 3, stock: 20 ft}", "no. 3, stock: 20 ft, lap: class B}"),
            (
                "no. 4, stock: 20 ft}",
                "no. 4, stock: 20 ft, lap: class B, grade: 40}",
            ),
            ("unit: sheet", "unit: roll"),
            ("width: 5 ft, length: 10 ft", "width: 5 ft, length: 150 ft"),
        ],
    );
    Shop::new(BUSINESS, &book)
}

fn job(east_west: &str, north_south: &str, rest: &str) -> String {
    format!(
        "customer: Ira Sample\nslabs:\n  slab: {{size: {east_west} x {north_south}, edges: {{north: doweled existing concrete, south: tied existing concrete}}}}\n  patio: {{size: {north_south} x {east_west}, bars: no. 4 at 14 in east-west and no. 3 at 17 1/2 in north-south}}\n{rest}"
    )
}

const SIZES: [(&str, &str); 5] = [
    ("12 ft 7 in", "9 ft 3 1/4 in"),
    ("61 ft", "23 ft 11 in"),
    ("4 ft", "88 ft 5/8 in"),
    ("20 ft", "20 ft"),
    ("1 ft 3 in", "2 ft"),
];

#[test]
fn a_pocket_calculator_follows_steel_too() {
    let shop = shop();
    let mut found = std::collections::BTreeSet::new();
    for (east_west, north_south) in SIZES {
        let job = job(east_west, north_south, "");
        let offer = shop.offer(&job);
        let all = reachable(&offer);
        found.extend(all.iter().map(|quantity| quantity.name().to_owned()));
        follow(0, &job, &offer);
    }
    let wanted = [
        "patio no. 4 lap length",
        "patio no. 3 development length",
        "slab mesh strips",
        "patio tie wire",
        "slab ties",
        "cartridges, epoxy",
    ];
    for name in wanted {
        assert!(found.contains(name), "no `{name}` in {found:#?}");
    }
}

/// What the owner sets flows on: another number of ties drills as many holes and fills them.
#[test]
fn a_set_number_of_ties_is_drilled_and_bonded() {
    let shop = shop();
    let set = "set:\n  slab ties: {to: 100, because: the engineer says so}\n  patio bar crossings: {to: 10, because: only the corners}\n";
    let offer = shop.offer(&job("20 ft", "20 ft", set));
    assert_eq!(value(&offer, "slab holes for ties"), Decimal::from(100));
    let hole = value(&offer, "adhesive a hole");
    assert_eq!(
        value(&offer, "slab adhesive for ties"),
        hole * Decimal::from(100)
    );
    assert_eq!(value(&offer, "ties, ties"), Decimal::from(100));
    assert_eq!(value(&offer, "patio wire ties"), Decimal::from(5));
}

/// Wire laid side by side never covers less than the slab inside its cover, and more slab never takes less.
#[test]
fn mesh_never_covers_less_than_the_slab() {
    for unit in ["roll", "sheet"] {
        let book = with(BOOK, &[("unit: sheet", &format!("unit: {unit}"))]);
        let shop = Shop::new(BUSINESS, &book);
        let mut before = Decimal::ZERO;
        for feet in 2..70 {
            let job = format!("customer: Ira Sample\nslabs: {{slab: 17 ft x {feet} ft}}");
            let offer = shop.offer(&job);
            let mesh = value(&offer, "slab mesh");
            // Of a roll, what the next one laps is not counted.
            let length = Decimal::new(if unit == "roll" { 95 } else { 100 }, 1);
            let wire = mesh * Decimal::from(5) * length;
            let third = Decimal::ONE / Decimal::from(3);
            let inside = (Decimal::from(17) - third) * (Decimal::from(feet) - third);
            assert!(inside <= wire, "{mesh} {unit}s on 17 ft x {feet} ft");
            assert!(before <= mesh, "{mesh} {unit}s on 17 ft x {feet} ft");
            before = mesh;
        }
    }
}
