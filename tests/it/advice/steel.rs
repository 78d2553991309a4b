//! Questions about dowels and ties, bars one way, and mesh from a roll.

use super::{Files, SIZE};

const HOUSE: &str = "edges: {north: house}";

/// The patio with these edges and keys, and a book that has dowels and ties.
pub(super) fn pinned(edges: &str) -> Files {
    Files::new()
        .job(HOUSE, edges)
        .book(
            "\nfiber:\n",
            "\ndowels:\n  smooth: {item: dowel, bar: 3/4 in smooth, spacing: 12 in}\n  thin: {item: dowel, bar: 1/2 in smooth}\n  ties: {item: dowel, bar: no. 4, adhesive: none}\n\nfiber:\n",
        )
        .book(
            "items:\n",
            "items:\n  dowel: {unit: piece, class: material, prices: {2026-03-01: 4.00}}\n",
        )
        .book("rates: ", "rates:\n  drill holes: 0.2 hours per piece\n#")
}

#[test]
fn a_slab_is_held_one_way_only() {
    let one = pinned("edges: {north: tied existing concrete}");
    one.silent("pinned-both-ways");
    one.silent("dowel-that-grips");
    pinned("edges: {north: tied existing concrete, south: tied existing concrete}")
        .silent("pinned-both-ways");
    pinned("edges: {north: tied existing concrete, east: tied existing concrete}").says(
        "pinned-both-ways",
        "`patio` is tied along two edges",
        "common practice, no source",
    );
    pinned("dowels: smooth, edges: {north: doweled existing concrete, west: doweled existing concrete}")
        .says("pinned-both-ways", "is doweled along", "a strip");
    pinned(
        "dowels: smooth, edges: {north: doweled existing concrete, west: tied existing concrete}",
    )
    .says("pinned-both-ways", "is tied and doweled", "");
}

#[test]
fn dowels_are_held_against_the_table_from_five_inches_up_where_trucks_cross() {
    let doweled = |kind: &str, thickness: &str| {
        pinned(&format!(
            "carries: trucks, dowels: {kind}, thickness: {thickness}, edges: {{north: doweled existing concrete}}"
        ))
    };
    doweled("smooth", "5 in").silent("light-dowels");
    doweled("smooth at 13 in", "5 in").says("light-dowels", "`13 in` apart", "Table 12-8");
    doweled("thin", "5 in").says("light-dowels", "are `1/2 in`", "airfield");
    doweled("thin", "4 in").silent("light-dowels");
    doweled("thin", "5 in")
        .job("carries: trucks", "carries: cars")
        .silent("light-dowels");
}

#[test]
fn what_should_slide_is_smooth_and_what_should_hold_is_not() {
    let doweled = "dowels: ties, edges: {north: doweled existing concrete}";
    pinned(doweled).says("dowel-that-grips", "deformed bars", "UFC 3-270-04");
    let tied = "ties: thin, edges: {north: tied existing concrete}";
    pinned(tied).says("dowel-that-grips", "smooth bars", "write `doweled`");
}

#[test]
fn dowels_that_are_named_want_an_edge() {
    let at = pinned("dowels: thin, edges: {north: house}").says(
        "dowels-unused",
        "none of its edges is doweled",
        "doweled existing concrete",
    );
    assert_eq!(at, "thin");
    pinned("dowels: thin, edges: {north: doweled bulkhead}").silent("dowels-unused");
    // A kind may name them for the slabs that need them.
    pinned("edges: {north: house}")
        .business("patio: {", "patio: {dowels: thin, ")
        .silent("dowels-unused");
}

#[test]
fn mesh_under_vehicles_comes_in_sheets() {
    let driveway = |files: Files| {
        files.job(
            "patio: {size: 24 ft x 16 ft",
            "driveway: {bars: none, mesh: 6x6 W1.4/W1.4, size: 24 ft x 16 ft",
        )
    };
    driveway(Files::new()).silent("rolled-mesh");
    let rolls = Files::new().book("unit: sheet", "unit: roll");
    driveway(rolls).says(
        "rolled-mesh",
        "mesh from a roll",
        "ASCC Position Statement 2",
    );
}

#[test]
fn bars_under_vehicles_run_both_ways() {
    let driveway = |bars: &str| {
        Files::new().job(
            "patio: {size: 24 ft x 16 ft",
            &format!("driveway: {{bars: {bars}, size: 24 ft x 16 ft"),
        )
    };
    driveway("no. 4 at 12 in east-west and no. 3 at 18 in north-south")
        .silent("steel-under-vehicle");
    driveway("no. 4 at 12 in east-west").says("steel-under-vehicle", "one way only", "each way");
}

#[test]
fn bars_one_way_need_less_room() {
    let thin =
        |bars: &str| Files::new().job(SIZE, &format!("{SIZE}, thickness: 3 1/2 in, bars: {bars}"));
    // Above 1 1/2 in; 2 in are left for the bars and the 1 1/2 in below them.
    thin("no. 4 at 18 in").says("no-room-for-bars", "crossing no. 4 bars", "thicker slab");
    thin("no. 4 at 18 in east-west").silent("no-room-for-bars");
    thin("no. 4 at 18 in east-west and no. 3 at 18 in north-south").says(
        "no-room-for-bars",
        "crossing no. 3 and no. 4 bars",
        "",
    );
}

#[test]
fn chairs_hold_the_steel_between_its_middle_and_its_cover() {
    let high = |thickness: &str, height: &str| {
        let chair = "is: Chairs 2 in\n";
        Files::new()
            .job(
                HOUSE,
                &format!("{HOUSE}, thickness: {thickness}, bars: no. 4 at 18 in"),
            )
            .book(chair, &format!("{chair}    height: {height}\n"))
    };
    high("5 in", "2 in").silent("chair-height");
    // 2 1/2 in to 3 1/2 in are wanted; bars may be off by 3/8 in.
    high("6 in", "2 1/8 in").silent("chair-height");
    high("6 in", "2 1/16 in").says(
        "chair-height",
        "chairs of 2 1/16 in hold the steel of `patio` `7/16 in` below the middle, 6 in thick",
        "take chairs of 2 1/2 in to 3 1/2 in",
    );
    // Nothing is taken off the 1 1/2 in above the upper bars.
    high("6 in", "3 1/2 in").silent("chair-height");
    high("6 in", "3 9/16 in").says("chair-height", "into the cover", "TI 809-28");
    high("4 in", "1 1/2 in").silent("chair-height");
    let thin = |low: &str| {
        let chairs = format!(
            "  low chair:\n    is: Low\n    unit: piece\n    class: material\n    height: {low}\n    prices: {{2026-03-01: 0.40}}\n  stake:\n"
        );
        high("4 in", "2 in").book("  stake:\n", &chairs)
    };
    // Of two the one that is right is taken, not the one that is nearer.
    thin("1 1/4 in").silent("chair-height");
    thin("7/8 in").says("chair-height", "chairs of 2 in", "TI 809-28");
    // Nobody knows how high they are.
    Files::new()
        .job(HOUSE, &format!("{HOUSE}, thickness: 6 in"))
        .silent("chair-height");
}
