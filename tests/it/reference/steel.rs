//! Steel and joints.

use rust_decimal_macros::dec;

use super::concrete::places;
use crate::support::{BOOK, BUSINESS, desk, value, with};
use flatwork::inside::geometry::Outline;
use flatwork::inside::geometry::joints::{Asked, lay_out};
use flatwork::inside::input::job::Choice;
use flatwork::inside::tables::joints::longest_spacing;
use flatwork::inside::values::Length;

/// A driveway built for regression, every figure computed here from the rules of the
/// reference: 20 × 36 ft × 4 in, 5 %, no. 4 at 18 in each way, 3 in cover, 20 ft stock, laps
/// of 40 diameters, joints at 10 ft.
#[test]
fn driveway_from_end_to_end() {
    let business = with(
        BUSINESS,
        &[
            ("allowance: 7%", "allowance: 5%"),
            ("thickness allowance: 1/4 in", "thickness allowance: 0 in"),
            ("order:\n", "order:\n  cover: 3 in\n"),
            ("driveway: {thickness: 5 in", "driveway: {thickness: 4 in"),
        ],
    );
    let job = "customer: Ira Sample\nslabs: {driveway: 20 ft x 36 ft}";
    let desk = desk(job, &business, BOOK);
    let offer = desk.offer();
    assert_eq!(value(&offer, "driveway area"), dec!(720));
    let net = value(&offer, "driveway concrete");
    assert_eq!(places(net, 3), dec!(8.889));
    let gross = net + value(&offer, "exterior order allowance");
    assert_eq!(places(gross, 3), dec!(9.333));
    assert_eq!(value(&offer, "exterior order"), dec!(9.5));

    let slab = &offer.by_choice[&Choice(Vec::new())].needs.slabs[0];
    let bars = slab.bars.first().expect("a driveway has bars");
    let runs: Vec<_> = bars
        .runs
        .iter()
        .map(|run| (run.length.feet(), run.count, run.pieces))
        .collect();
    assert_eq!(runs, [(dec!(35.5), 14, 2), (dec!(19.5), 25, 1)]);
    // 984.5 ft without laps, 14 laps of 20 in.
    assert_eq!(
        places(
            value(&offer, "driveway no. 4 lap length") * dec!(14) / dec!(12),
            1
        ),
        dec!(23.3)
    );
    assert_eq!(places(bars.placed.value(), 1), dec!(1007.8));
    assert_eq!(places(bars.weight.value(), 1), dec!(673.2));

    let joints = slab.joints.as_ref().expect("a driveway has joints");
    assert_eq!(joints.layout.length, dec!(96));
    let sizes: Vec<_> = joints.layout.panels.iter().map(|one| one.size).collect();
    let panel = (Length::feet_whole(10), Length::feet_whole(9));
    assert_eq!(sizes[..], [panel; 8]);
}

/// Slab 4 in thick: joints 8 to 12 ft apart (ACI 302.1R-96 as a secondary page restates it); a
/// 10 ft drive with 1 in stone, at most 10 ft (a textbook, as a secondary page restates it).
#[test]
fn joints_of_a_four_inch_slab() {
    let four = Length::inches_whole(4);
    let feet = |stone| longest_spacing(four, stone).feet();
    assert_eq!(feet(None), dec!(8));
    assert_eq!(feet(Some(Length::inches_whole(1))), dec!(10));
}

/// A walk 3 ft wide is cut every 3 ft, a drive 10 ft wide every 10 ft: square panels (Beall
/// p. 30, seen on a secondary page).
#[test]
fn panels_are_square() {
    let cut = |width: i64, length: i64| {
        let outline = Outline::rectangle(Length::feet_whole(width), Length::feet_whole(length));
        let laid = lay_out(&Asked {
            outline: &outline,
            longest: Length::feet_whole(width),
            boxes: &[],
            solid: &[],
            isolated: &[],
            meet: &[],
            drawn: None,
        });
        laid.panels.len()
    };
    assert_eq!(cut(3, 30), 10);
    assert_eq!(cut(10, 40), 4);
}

/// Counted by hand on squared paper: 10 ft × 8 ft with a corner of 4 ft × 3 ft 11 in missing.
/// Lines lie 2, 25, 48, 71, 94 in up and 2, 25.2, 48.4, 71.6, 94.8, 118 in across. The lower two
/// bars end at 70 in and meet three each; the one an inch above the inside corner meets four, for
/// the other two begin 2 in above it; the upper two meet all six.
#[test]
fn bars_cross_only_inside_the_outline() {
    let book = with(
        BOOK,
        &[
            (
                "items:\n",
                "items:\n  wire: {unit: lb, class: material, prices: {2026-03-01: 2.10}}\n",
            ),
            ("  chairs: chair\n", "  chairs: chair\n  tie wire: wire\n"),
        ],
    );
    let outline =
        "[east 10 ft, south 4 ft 1 in, west 4 ft, south 3 ft 11 in, west 6 ft, north 8 ft]";
    let job = format!(
        "customer: Ira Sample\nslabs:\n  patio: {{outline: {outline}, bars: no. 4 at 24 in}}"
    );
    let offer = desk(&job, BUSINESS, &book).offer();
    assert_eq!(value(&offer, "patio bar crossings"), dec!(22));
    // Half of them, a foot each, of a roll of 3.5 lb and 336 ft.
    assert_eq!(places(value(&offer, "tie wire"), 4), dec!(0.1146));
}

/// A roll of 5 ft lapped 6 in covers 4.5 ft: 11.1% more must be bought, not 10% (a textbook's
/// slip), and 11.5% where the next roll laps 6 in too (computed).
#[test]
fn mesh_in_rolls_is_divided_by_its_net_width() {
    let book = with(
        BOOK,
        &[
            ("unit: sheet", "unit: roll"),
            ("width: 5 ft, length: 10 ft", "width: 5 ft, length: 150 ft"),
        ],
    );
    let business = with(BUSINESS, &[("order:\n", "order:\n  cover: 0 in\n")]);
    let rolls = |size: &str| {
        let job = format!("customer: Ira Sample\nslabs: {{slab: {size}}}");
        value(&desk(&job, &business, &book).offer(), "slab mesh")
    };
    // 672.75 sq ft are one roll of 750; with 10% they would be 0.987 of it.
    assert_eq!(rolls("4 ft 6 in x 149 ft 6 in"), dec!(1));
    // 44 1/2 ft beyond the first lap are ten strips.
    assert_eq!(rolls("45 ft x 149 ft 6 in"), dec!(10));
    assert_eq!(rolls("4 ft 6 in x 74 ft 9 in"), dec!(0.5));
}
