//! Joints: how deep and how they are made, what limits a panel, where they are drawn and met.

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use flatwork::inside::costing::Offer;
use flatwork::inside::geometry::Point;
use flatwork::inside::values::Length;

use crate::support::{BUSINESS, RIVER_ROAD, desk, value, with};

fn job(slabs: &str) -> String {
    format!("customer: Ira Sample\nquoted: 2026-05-04\npour: 2026-06-15\nslabs: {{{slabs}}}\n")
}

fn offer(slabs: &str, book: &[(&str, &str)]) -> Offer {
    desk(&job(slabs), BUSINESS, &with(RIVER_ROAD, book)).offer()
}

/// The scope as the customer reads it.
fn read(slabs: &str) -> String {
    let view = desk(&job(slabs), BUSINESS, RIVER_ROAD).view();
    serde_json::to_string(&view).unwrap().replace('\u{a0}', " ")
}

#[track_caller]
fn says(slabs: &str, words: &str) {
    let read = read(slabs);
    assert!(read.contains(words), "`{words}` is not in {read}");
}

fn at(x: Decimal, y: Decimal) -> Point {
    Point::new(
        Length::of_feet(x).as_nanometres(),
        Length::of_feet(y).as_nanometres(),
    )
}

/// Both ends of every joint of a slab, in feet from its south-west corner.
fn lines(offer: &Offer, takeoff_slab: usize) -> Vec<[Point; 2]> {
    let slab = &offer.quoted().needs.slabs[takeoff_slab];
    let joints = slab.joints.as_ref().expect("the slab has joints");
    let lines = joints.layout.lines.iter();
    lines
        .map(|line| [line.from.min(line.to), line.from.max(line.to)])
        .collect()
}

const TWO: &str = "slab: {kind: walk, size: 30 ft x 4 ft}, drive: {kind: driveway, size: 20 ft x 20 ft, thickness: 6 in, MORE}";

#[test]
fn each_slab_is_told_the_depth_it_is_cut() {
    let two = |more: &str| TWO.replace("MORE", more);
    says(&two(""), "; joints 1 in deep (slab); 1½ in deep (drive)");
    says(
        &two("thickness: 4 in").replace("thickness: 6 in, ", ""),
        "rounded edges; joints 1 in deep",
    );
    let sawn = two("sawn: yes");
    says(
        &sawn,
        "rounded edges; joints 1 in deep (slab); sawn 1½ in deep (drive)",
    );
    // Nobody rounds the edges of a saw cut.
    let both = two("sawn: yes").replace("30 ft x 4 ft", "30 ft x 4 ft, sawn: early");
    says(
        &both,
        "joints sawn 1 in deep the same day (slab); sawn 1½ in deep (drive)",
    );
    assert!(!read(&both).contains("rounded edges"));
    // An uneven slab is cut as its thick end asks for; its owner may say otherwise.
    says(
        &two("").replace("6 in", "4 in to 8 in north"),
        "2 in deep (drive)",
    );
    says(&two("sawn: \"no, 1 1/4 in deep\""), "1¼ in deep (drive)");
}

#[test]
fn the_usual_of_a_kind_holds_as_far_as_the_thickness_allows() {
    let longest = |slab: &str| {
        let offer = offer(&format!("patio: {{size: 40 ft x 40 ft, {slab}}}"), &[]);
        let slab = &offer.quoted().needs.slabs[0];
        slab.joints.as_ref().unwrap().longest.feet()
    };
    // 10 ft are usual for a patio of 4 in; 30 times 3 in are 7 ft 6 in.
    assert_eq!(longest("thickness: 4 in"), dec!(10));
    assert_eq!(longest("thickness: 3 in"), dec!(7.5));
    // What is said of the slab itself is its owner's word.
    assert_eq!(longest("thickness: 3 in, joints: 9 ft"), dec!(9));
    // Who draws them and says nothing else is checked by the thickness.
    assert_eq!(
        longest("thickness: 3 in, joints at: 20 ft from west"),
        dec!(7.5)
    );
}

#[test]
fn hours_go_by_the_way_joints_are_made() {
    let rates = "rates:\n  joints by hand: 2 hours per 100 ft\n  joints by saw: 1 hour per 100 ft";
    let hours = |sawn: &str, more: &str, task: &str| {
        let rates = format!("{rates}{more}");
        let slab = format!("patio: {{size: 24 ft x 20 ft, joints: 12 ft, sawn: {sawn}}}");
        value(&offer(&slab, &[("rates:", &rates)]), task)
    };
    assert_eq!(hours("no", "", "joints by hand hours"), dec!(0.88));
    assert_eq!(hours("yes", "", "joints by saw hours"), dec!(0.44));
    // An early saw takes as long as the other where the book does not say.
    assert_eq!(hours("early", "", "joints by early saw hours"), dec!(0.44));
    let early = "\n  joints by early saw: 1/2 hour per 100 ft";
    assert_eq!(
        hours("early", early, "joints by early saw hours"),
        dec!(0.22)
    );
    let face = |sawn: &str| {
        let slab =
            format!("patio: {{size: 24 ft x 20 ft, joints: 12 ft, thickness: 6 in, sawn: {sawn}}}");
        value(&offer(&slab, &[]), "patio sawn joint face").round_dp(9)
    };
    assert_eq!(face("yes"), dec!(5.5));
    assert_eq!(face("early"), dec!(3.666666667));
}

#[test]
fn a_rule_goes_by_joints_as_they_are_made() {
    let rule = "also:\n  RULE";
    let bought = |name: &str, sawn: &str| {
        let rule = rule.replace(
            "RULE",
            &format!("sealed: {{for: {name}, buy: topsoil, much: 1 cu yd per 10}}"),
        );
        let rule = rule.replace(
            "per 10",
            if name == "panels" {
                "per 1 piece"
            } else {
                "per 10 ft"
            },
        );
        let slab = format!("patio: {{size: 24 ft x 20 ft, joints: 12 ft, sawn: {sawn}}}");
        value(&offer(&slab, &[("also:", &rule)]), "sealed")
    };
    assert_eq!(bought("tooled joints", "no"), dec!(4.5));
    assert_eq!(bought("sawn joints", "yes"), dec!(4.5));
    assert_eq!(bought("joints sawn early", "early"), dec!(4.5));
    assert_eq!(bought("panels", "no"), dec!(4));
}

#[test]
fn a_key_runs_along_the_bulkhead_that_names_it() {
    let pours = "customer: Ira Sample\nquoted: 2026-05-04\npour: [{day: 2026-06-15, slabs: [lower]}, {day: 2026-06-16, slabs: [upper]}]\n";
    let along = |lower: &str, upper: &str| {
        let slabs = format!(
            "{pours}slabs: {{lower: {{kind: slab, size: 20 ft x 10 ft{lower}}}, upper: {{kind: slab, size: 20 ft x 10 ft, beside: \"lower, north edge, 0 ft from west end\"{upper}}}}}\n"
        );
        let offer = desk(&slabs, BUSINESS, RIVER_ROAD).offer();
        ["lower keyed joints", "lower construction joints"].map(|name| {
            let slab = &offer.quoted().needs.slabs[0];
            let mut listed = slab.listed.iter().map(|one| &one.quantity);
            listed
                .find(|one| one.name() == name)
                .map(flatwork::inside::trade::Quantity::value)
        })
    };
    let twenty = Some(dec!(20));
    assert_eq!(along("", ""), [None, twenty]);
    assert_eq!(
        along(", edges: {north: \"bulkhead, keyed\"}", ""),
        [twenty; 2]
    );
    assert_eq!(along("", ", edges: {south: keyed bulkhead}"), [twenty; 2]);
}

#[test]
fn joints_run_where_their_owner_draws_them() {
    let slab = "patio: {size: 20 ft x 10 ft, joints at: [8 ft from west, from 8 ft from west and 4 ft from north to 0 ft from east and 4 ft from north]}";
    let low = at(dec!(0), dec!(-10));
    let place = |x, y| low + at(x, y);
    let mut found = lines(&offer(slab, &[]), 0);
    found.sort();
    assert_eq!(
        found,
        [
            [place(dec!(8), dec!(0)), place(dec!(8), dec!(10))],
            [place(dec!(8), dec!(6)), place(dec!(20), dec!(6))],
        ]
    );
}

#[test]
fn joints_meet_what_stays() {
    let slabs = "walk: {size: 24 ft x 4 ft, match: [7 ft from the west end of the north side]}";
    let walk = lines(&offer(slabs, &[]), 0);
    let seven = at(dec!(7), dec!(0));
    assert!(walk.iter().any(|ends| ends.contains(&seven)), "{walk:?}");
}

#[test]
fn a_solid_block_has_no_joints_because_its_kind_does() {
    let stoop = |more: &str| {
        let slabs = format!(
            "patio: {{size: 16 ft x 12 ft, stoop: solid, steps: \"3 risers of 7 in, 12 in treads, 5 ft wide, from south edge\"{more}}}"
        );
        let offer = offer(&slabs, &[]);
        offer.quoted().needs.slabs[0].is_jointed()
    };
    assert!(!stoop(""));
    assert!(stoop(", joints: 8 ft"));
}
