//! Dowels and ties: how many, and what fills their holes.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use super::concrete::places;
use crate::support::{BOOK, BUSINESS, desk, value, with};

/// A slab of so many feet along its tied or doweled south side, with this kind in the book.
fn pinned(feet: u32, edge: &str, kind: &str) -> flatwork::inside::costing::Offer {
    let book = with(
        BOOK,
        &[
            (
                "items:\n",
                "items:\n  pin: {unit: piece, class: material, prices: {2026-03-01: 2.00}}\n  epoxy: {unit: piece, class: material, prices: {2026-03-01: 25.00}}\n",
            ),
            (
                "\nfiber:\n",
                &format!("\ndowels:\n  one: {{item: pin, {kind}}}\n\nfiber:\n"),
            ),
            ("  dig: ", "  drill holes: 0.2 hours per piece\n  dig: "),
        ],
    );
    let job = format!(
        "customer: Ira Sample\nslabs:\n  slab: {{size: {feet} ft x 10 ft, edges: {{south: {edge} existing concrete}}}}"
    );
    desk(&job, BUSINESS, &book).offer()
}

/// The estimating method of a dowel grout chart, (hole − bar) × depth, with exact circles: the
/// chart rounds each area up to 0.025 sq in first, which is 13.2% too much here.
#[test]
fn adhesive_for_no_4_bars_in_five_eighths_holes() {
    // 24 of them: 23 spaces of 1 ft between 6 in at both ends.
    let kind = "bar: no. 4, length: 12 in, depth: 6 in, hole: 5/8 in, spacing: 12 in, from ends: 6 in, adhesive: epoxy";
    let offer = pinned(24, "tied", kind);
    assert_eq!(value(&offer, "slab ties"), dec!(24));
    assert_eq!(value(&offer, "slab holes for ties"), dec!(24));
    assert_eq!(places(value(&offer, "adhesive a hole"), 2), dec!(10.86));
    let net = value(&offer, "slab adhesive for ties");
    assert_eq!(places(net, 1), dec!(260.6));
    assert_eq!(places(net * dec!(1.1), 1), dec!(286.7));
    assert_eq!(value(&offer, "adhesive, epoxy"), Decimal::ONE);
}

/// 20 dowels of 3/4 in, grouted in 7/8 in holes 8 in deep: 25.53 cu in, 418.3 ml.
#[test]
fn adhesive_for_smooth_dowels_that_are_grouted() {
    let kind = "bar: 3/4 in smooth, depth: 8 in, hole: 7/8 in, spacing: 12 in, from ends: 6 in, bonded: yes, adhesive: epoxy, cartridge: 300 ml, loss: 0%";
    let offer = pinned(20, "doweled", kind);
    assert_eq!(value(&offer, "slab dowels"), dec!(20));
    let net = value(&offer, "slab adhesive for dowels");
    assert_eq!(places(net, 1), dec!(418.3));
    assert_eq!(places(net / dec!(16.387064), 2), dec!(25.53));
    assert_eq!(value(&offer, "adhesive, epoxy"), dec!(2));
    // Naming the adhesive is enough; `bonded: no` takes it away again.
    let said = kind.replace("bonded: yes, ", "");
    let named = pinned(20, "doweled", &said);
    assert_eq!(value(&named, "slab adhesive for dowels"), net);
    let free = pinned(20, "doweled", &kind.replace("bonded: yes", "bonded: no"));
    assert!(free.quoted().needs.slabs[0].dowels[0].adhesive.is_none());
}

/// Dowels every 4 ft into an old slab (common practice, no source), 12 in from the corners; a
/// smooth one keeps its isolation strip and takes no adhesive, a tie has no strip.
#[test]
fn dowels_every_four_feet_into_an_old_slab() {
    let kind = "bar: 1/2 in smooth, spacing: 4 ft";
    // 20 ft: 18 ft between the outermost, 4.5 spaces, so 5, and one more.
    for (feet, many) in [(20, 6), (18, 5), (22, 6), (2, 1), (1, 1), (3, 2)] {
        let offer = pinned(feet, "doweled", kind);
        assert_eq!(
            value(&offer, "slab dowels"),
            Decimal::from(many),
            "{feet} ft"
        );
        assert_eq!(value(&offer, "slab isolation strip"), Decimal::from(feet));
    }
    let tied = pinned(20, "tied", "bar: no. 4, adhesive: none");
    assert_eq!(value(&tied, "slab ties"), dec!(10));
    assert_eq!(value(&tied, "slab isolation strip"), dec!(0));
}

/// Through the joint between two pours they are counted once, whichever slab names them.
#[test]
fn dowels_through_a_bulkhead_are_counted_once() {
    let book = with(
        BOOK,
        &[
            (
                "items:\n",
                "items:\n  pin: {unit: piece, class: material, prices: {2026-03-01: 2.00}}\n",
            ),
            (
                "\nfiber:\n",
                "\ndowels:\n  one: {item: pin, bar: 1/2 in smooth}\n\nfiber:\n",
            ),
        ],
    );
    let bought = |first: &str, second: &str| {
        let job = format!(
            "customer: Ira Sample\npour:\n  - {{day: 2026-06-15, slabs: [first]}}\n  - {{day: 2026-07-06, slabs: [second]}}\nslabs:\n  first: {{kind: slab, size: 20 ft x 10 ft{first}}}\n  second: {{kind: slab, size: 20 ft x 10 ft, beside: \"first, north edge, 0 ft from west end\"{second}}}"
        );
        let offer = desk(&job, BUSINESS, &book).offer();
        let forms = value(&offer, "first straight form") + value(&offer, "second straight form");
        (value(&offer, "dowels, one"), forms)
    };
    let (north, south) = (
        ", edges: {north: doweled bulkhead}",
        ", edges: {south: doweled bulkhead}",
    );
    // 18 ft between the outermost, 9 spaces of 24 in; forms along three sides twice and between.
    for (first, second) in [(north, ""), ("", south), (north, south)] {
        assert_eq!(bought(first, second), (dec!(10), dec!(100)));
    }
}
