//! Each way out of a pour that cannot be finished has the price it has when it is written out.

use flatwork::inside::values::Money;

use super::{BARROWS, BROOM, CHUTE, DRIVEWAY, TWO, only_three, said, silent};
use crate::support::{BUSINESS, RIVER_ROAD, desk, with};

fn price(job: &str, business: &str) -> Money {
    let offer = desk(job, business, RIVER_ROAD).offer();
    offer.quoted().totals().price
}

#[track_caller]
fn case(job: &str, way: &str, written: &str) {
    case_of(BUSINESS, job, way, written);
}

#[track_caller]
fn case_of(business: &str, job: &str, way: &str, written: &str) {
    let all = said(job, business, RIVER_ROAD);
    let more = price(written, business) - price(job, business);
    let wanted = if more < Money::ZERO {
        format!("{way}: {} less", Money::ZERO - more)
    } else {
        format!("{way}: {more} more")
    };
    let lines = &all[0].2;
    assert!(lines.contains(&wanted), "no `{wanted}` in {lines:#?}");
    silent(written, business, RIVER_ROAD);
}

#[test]
fn every_way_out_has_the_price_it_has_when_it_is_written() {
    let by = |method: &str| with(CHUTE, &[("by: chute", &format!("by: {method}"))]);
    for method in ["wheelbarrow", "buggy", "pump"] {
        let way = format!("`by: {method}`");
        case(CHUTE, &way, &by(method));
    }
    let less = format!("{BARROWS}truck: 2 cu yd\n");
    case_of(&only_three(), BARROWS, "`truck: 2 cu yd`", &less);
    let warm = format!("{BROOM}temperature: 75\n");
    case(&warm, "`people: 4`", &format!("{warm}people: 4\n"));
    let slow = with(&warm, &[("broom}", "broom, mix: exterior slow}")]);
    case(&warm, "`mix: exterior slow`", &slow);
}

#[test]
fn every_number_of_pours_has_the_price_it_has_when_it_is_written() {
    // Whole slabs on two working days, and two things at once.
    let two = with(BROOM, &[("broom}\n", TWO)]);
    let on_two_days = |first: &str, second: &str| {
        format!(
            "pour: [{{day: 2026-06-16, slabs: [{first}]}}, {{day: 2026-06-17, slabs: [{second}]}}]"
        )
    };
    let whole = with(&two, &[("pour: 2026-06-16", &on_two_days("walk", "other"))]);
    case(&two, "in 2 pours of whole slabs", &whole);
    let large = with(
        BARROWS,
        &[(
            "patio: {size: 20 ft x 14 ft}",
            "terrace: {size: 30 ft x 30 ft}",
        )],
    );
    let halves = "terrace: {size: 15 ft x 30 ft}\n  terrace 2: {kind: terrace, size: 15 ft x 30 ft, beside: \"terrace, east edge, 0 ft from south end\"}";
    let halves = with(
        &large,
        &[
            ("terrace: {size: 30 ft x 30 ft}", halves),
            ("pour: 2026-06-16", &on_two_days("terrace", "terrace 2")),
        ],
    );
    let way = "in 2 pours with bulkheads between and `people: 6`";
    case(&large, way, &format!("{halves}people: 6\n"));
    // Four slabs beside each other on four working days; bulkheads between pours come by themselves.
    let beside = |n: u32, at: &str| {
        format!(
            "  driveway {n}: {{kind: driveway, size: 24 ft x 31 ft, beside: \"{at}, north edge, 0 ft from west end\"}}\n"
        )
    };
    let four = with(
        DRIVEWAY,
        &[
            ("24 ft x 124 ft", "24 ft x 31 ft"),
            (
                "pour: 2026-06-16",
                "pour: [{day: 2026-06-16, slabs: [driveway]}, {day: 2026-06-17, slabs: [driveway 2]}, {day: 2026-06-18, slabs: [driveway 3]}, {day: 2026-06-22, slabs: [driveway 4]}]",
            ),
        ],
    );
    let four = format!(
        "{four}{}{}{}",
        beside(2, "driveway"),
        beside(3, "driveway 2"),
        beside(4, "driveway 3")
    );
    case(DRIVEWAY, "in 4 pours with bulkheads between", &four);
    // No thick edge at the bulkhead; what is dug under the slab is dug under both of its parts.
    let dug = |slabs: &str, under: &str| {
        format!(
            "customer: Ira Sample\nquoted: 2026-05-04\nexposure: frost\nslabs:\n{slabs}remove:\n  - ground: {{under: [{under}], depth: 8 in, of: soil}}\n"
        )
    };
    let two_days = "pour: [{day: 2026-06-16, slabs: [walk]}, {day: 2026-06-17, slabs: [walk 2]}]\n";
    for (whole, first, second) in [
        (
            "size: 20 ft x 40 ft, thickened: \"all, 12 in wide, 12 in deep\"",
            "size: 20 ft x 20 ft, thickened: {edges: [south, west, east], width: 12 in, depth: 12 in}",
            "size: 20 ft x 20 ft, thickened: {edges: [north, west, east], width: 12 in, depth: 12 in}",
        ),
        (
            "corners: [\"0 ft, 0 ft\", \"25 ft, 0 ft\", \"20 ft, 5 ft\", \"20 ft, 35 ft\", \"25 ft, 40 ft\", \"0 ft, 40 ft\"]",
            "corners: [\"0 ft, 0 ft\", \"25 ft, 0 ft\", \"20 ft, 5 ft\", \"20 ft, 20 ft\", \"0 ft, 20 ft\"]",
            "corners: [\"0 ft, 0 ft\", \"20 ft, 0 ft\", \"20 ft, 15 ft\", \"25 ft, 20 ft\", \"0 ft, 20 ft\"]",
        ),
    ] {
        let slab = |key: &str, size: &str, more: &str| {
            format!("  {key}: {{kind: slab, finish: broom, {size}{more}}}\n")
        };
        let one = format!(
            "pour: 2026-06-16\n{}",
            dug(&slab("walk", whole, ""), "walk")
        );
        let beside = ", beside: \"walk, north edge, 0 ft from west end\"";
        let slabs = slab("walk", first, "") + &slab("walk 2", second, beside);
        let two = format!("{two_days}{}", dug(&slabs, "walk, walk 2"));
        case(&one, "in 2 pours with bulkheads between", &two);
    }
}
