//! Base and removal: stone by the ton, soil loose and by the load.

use rust_decimal_macros::dec;

use super::concrete::{places, with_allowance};
use crate::support::{BOOK, BUSINESS, desk, value, with};

/// 500 × 12 ft × 2 in of stone at 2.2 ton a yard: 81.48 ton (computed here). A secondary
/// page, chtrucking.net, rounds at each step and prints 222, 488, 41 and 82: not reproduced.
#[test]
fn stone_is_not_rounded_at_each_step() {
    let book = with(
        BOOK,
        &[(
            "{item: crushed stone, delivered: 2 ton per cu yd}",
            "{item: crushed stone, delivered: 2.2 ton per cu yd}",
        )],
    );
    let job = "customer: Ira Sample\nslabs: {walk: {size: 500 ft x 12 ft, base: 2 in of crushed stone, joints: 12 ft}}";
    let offer = desk(job, BUSINESS, &book).offer();
    assert_eq!(places(value(&offer, "walk base"), 2), dec!(37.04));
    let tons = value(&offer, "walk crushed stone");
    assert_eq!(places(tons, 2), dec!(81.48));
    assert_ne!(places(tons, 0), dec!(82), "rounded at each step");
    // Sold by the half ton.
    assert_eq!(value(&offer, "base, crushed stone"), dec!(81.5));
}

/// 35 × 7 ft × 4 in at 1.2827 ton a yard: 3.0247 cu yd and 3.8798 ton (computed here). A
/// secondary page, had2know.com, prints 3.025 and 3.8802: rounded between.
#[test]
fn stone_from_the_unrounded_yards() {
    let book = with(
        BOOK,
        &[(
            "delivered: 2 ton per cu yd",
            "delivered: 1.2827 ton per cu yd",
        )],
    );
    let job = "customer: Ira Sample\nslabs: {walk: {size: 35 ft x 7 ft, joints: 7 ft}}";
    let offer = desk(job, BUSINESS, &book).offer();
    assert_eq!(places(value(&offer, "walk base"), 4), dec!(3.0247));
    assert_eq!(places(value(&offer, "walk crushed stone"), 4), dec!(3.8798));
    assert_ne!(
        places(value(&offer, "walk crushed stone"), 4),
        dec!(3.8802),
        "rounded between"
    );
}

/// A base of 600 sq ft × 4 in at 2 ton a yard: 14.81 ton (computed here).
#[test]
fn base_of_six_hundred_square_feet() {
    let offer = with_allowance("7%", "  patio: 30 ft x 20 ft");
    assert_eq!(places(value(&offer, "patio crushed stone"), 2), dec!(14.81));
    assert_eq!(value(&offer, "base, crushed stone"), dec!(15));
}

/// 100 × 16 ft × 6 in, a quarter more for compaction, 1.5 ton a loose yard: a secondary page,
/// gunnisongravel.com, gives the method only; computed here 55.56 ton.
#[test]
fn stone_with_compaction_in_its_factor() {
    let book = with(
        BOOK,
        &[(
            "delivered: 2 ton per cu yd",
            "delivered: 1.875 ton per cu yd",
        )],
    );
    let job = "customer: Ira Sample\nslabs: {driveway: {size: 100 ft x 16 ft, base: 6 in of crushed stone}}";
    let offer = desk(job, BUSINESS, &book).offer();
    assert_eq!(
        places(value(&offer, "driveway base") * dec!(1.25), 3),
        dec!(37.037)
    );
    assert_eq!(
        places(value(&offer, "driveway crushed stone"), 2),
        dec!(55.56)
    );
}

fn hauled(loose: &str, load: &str, removed: &str) -> flatwork::inside::costing::Offer {
    let soil = format!("soil: {{item: dump soil, loose: {loose}, load: {load} cu yd}}");
    let book = with(
        BOOK,
        &[(
            "soil: {item: dump soil, loose: 1.25, load: 10 cu yd}",
            &soil,
        )],
    );
    let job = format!("customer: Ira Sample\nslabs: {{walk: 4 ft x 8 ft}}\nremove:\n{removed}\n");
    desk(&job, BUSINESS, &book).offer()
}

/// 1,490 cu yd compacted, shrinkage 95 %, swell 14 %, trucks of 12: 1,788 loose and 149 loads
/// exactly (a course question on a secondary page, answer computed here; 1.14 ÷ 0.95 = 1.2).
/// Binary floating point makes 1787.9999999999998 of it, so the boundary must be exact.
#[test]
fn loads_exactly_on_the_boundary() {
    let offer = hauled(
        "1.2",
        "12",
        "  - bank: {size: 40230 sq ft x 12 in, of: soil}",
    );
    assert_eq!(value(&offer, "soil hauled, in place"), dec!(1490));
    assert_eq!(value(&offer, "soil hauled, loose"), dec!(1788));
    assert_eq!(value(&offer, "soil hauled"), dec!(149));
}

/// 10 cu yd become 13: swell 30 % (projectengineer.net, a secondary page).
#[test]
fn ten_yards_become_thirteen() {
    let offer = hauled("1.3", "10", "  - bank: {size: 810 sq ft x 4 in, of: soil}");
    let (solid, loose) = (
        value(&offer, "soil hauled, in place"),
        value(&offer, "soil hauled, loose"),
    );
    assert_eq!((solid, loose), (dec!(10), dec!(13)));
}

/// Strips of 10.5 × 17, 14.5 × 12.5 and 15 × 14.5 ft, 9 in deep, swell 10 %, trucks of 7:
/// 577.25 sq ft, 16.035 and 17.638 cu yd, 3 trucks (computed here). A secondary page,
/// writinguniverse.com, multiplies by 0.037 and prints 16.02, and 17.63 after it.
#[test]
fn three_strips_of_soil() {
    let offer = hauled(
        "1.1",
        "7",
        "  - one: {size: 10.5 ft x 17 ft x 9 in, of: soil}\n  - two: {size: 14.5 ft x 12.5 ft x 9 in, of: soil}\n  - three: {size: 15 ft x 14.5 ft x 9 in, of: soil}",
    );
    let area = ["one area", "two area", "three area"].map(|name| value(&offer, name));
    assert_eq!(area.iter().sum::<rust_decimal::Decimal>(), dec!(577.25));
    let (solid, loose) = (
        value(&offer, "soil hauled, in place"),
        value(&offer, "soil hauled, loose"),
    );
    assert_eq!(places(solid * dec!(27), 2), dec!(432.94));
    assert_eq!(
        (places(solid, 3), places(loose, 3)),
        (dec!(16.035), dec!(17.638))
    );
    assert_ne!(places(solid, 2), dec!(16.02), "1/27 taken as 0.037");
    assert_eq!(value(&offer, "soil hauled"), dec!(3));
}
