//! Base and digging where they lie: past the forms, under thick edges and steps.

use std::fs;

use rust_decimal::Decimal;
use rust_decimal_macros::dec;

use crate::records::firm;
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

/// What the customer reads of it.
fn told(slabs: &str, term: &str) -> Option<String> {
    let job = format!("customer: Ira Sample\nslabs:\n{slabs}");
    let view = desk(&job, BUSINESS, BOOK).view();
    let mut scope = view.scope.into_iter();
    let found = scope.find(|one| one.word == term);
    found.map(|one| one.text.replace('\u{a0}', " "))
}

/// 20 ft at 1/8 in are 2 1/2 in: thicker by half of that on the mean, 400 × 1.25 ÷ 324 more.
#[test]
fn a_slab_that_falls_upon_a_level_base_is_thicker_where_it_is_high() {
    let slab = |more: &str| {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 20 ft x 20 ft, thickness: 4 in, fall: 1/8 in per ft south{more}}}\n"
        );
        desk(&job, BUSINESS, BOOK).offer()
    };
    let follows = value(&slab(""), "patio concrete");
    let level = value(&slab(", level base: yes"), "patio concrete");
    assert_eq!(places(follows, 6), places(dec!(1600) / dec!(324), 6));
    let more = dec!(400) * dec!(1.25) / dec!(324);
    assert_eq!(places(level - follows, 6), places(more, 6));
    let said = value(&slab(", level base: yes"), "patio more on a level base");
    assert_eq!(places(said, 6), places(more, 6));
}

/// Worked out by hand from rectangles and thirds: thin end + what it rises to the middle of the area.
#[test]
fn an_uneven_slab_of_any_shape_is_as_thick_as_at_the_middle_of_its_area() {
    #[track_caller]
    fn case(slab: &str, yards: Decimal) {
        let job = format!("customer: Ira Sample\nslabs:\n  patio: {{{slab}}}\n");
        let offer = desk(&job, BUSINESS, BOOK).offer();
        let found = places(value(&offer, "patio concrete"), 6);
        assert_eq!(found, places(yards / dec!(324), 6), "{slab}");
    }
    // 30 × 10 ft at 25 ft from the south and 10 × 20 ft at 10 ft.
    let ell =
        "outline: [east 30 ft, south 10 ft, west 20 ft, south 20 ft, west 10 ft, north 30 ft]";
    let level = "thickness: 4 in, level base: yes, fall: 1/4 in per ft";
    case(
        &format!("{ell}, {level} south"),
        dec!(300) * dec!(10.25) + dec!(200) * dec!(6.5),
    );
    let taper = dec!(500) * dec!(4) + dec!(2) / dec!(30) * (dec!(7500) + dec!(2000));
    case(&format!("{ell}, thickness: 4 in to 6 in north"), taper);
    // The middle of a triangle lies a third of the way from its square corner.
    let triangle = "size: \"triangle 30 ft x 20 ft, square at southwest\"";
    let third = dec!(300) * (dec!(4) + dec!(5) / dec!(3));
    case(&format!("{triangle}, {level} south"), third);
    let third = dec!(300) * (dec!(4) + dec!(10) / dec!(3));
    case(&format!("{triangle}, {level} north"), third);
    // 24 sq ft at 3 ft from the south are taken off of 200 at 5 ft; 4 sq ft are not.
    let hole = |size: &str| {
        format!(
            "size: 20 ft x 10 ft, {level} south, cut out: [bed: {{size: {size}, at: 2 ft from west and 1 ft from south}}]"
        )
    };
    let left = dec!(4) * dec!(176) + dec!(0.25) * (dec!(1000) - dec!(72));
    case(&hole("6 ft x 4 ft"), left);
    // A half circle: 4 ÷ 3π of its radius off the flat side.
    let half = Decimal::PI * dec!(50);
    let middle = dec!(40) / dec!(3) / Decimal::PI;
    case(
        &format!("size: \"half circle 20 ft, flat at south\", {level} south"),
        half * (dec!(4) + middle / dec!(4)),
    );
}

/// 30 × 20 ft: 9 in in the north, 4 in in the south, and from one to the other along both ends.
#[test]
fn each_side_is_formed_as_deep_as_it_is() {
    let forms = |slab: &str| {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 30 ft x 20 ft, thickness: 4 in{slab}}}\n"
        );
        let rates = "rates:\n  form deep: 11 hours per 100 ft";
        let offer = desk(&job, BUSINESS, &with(BOOK, &[("rates:", rates)])).offer();
        ["straight form", "deep form"].map(|form| value(&offer, &format!("patio {form}")))
    };
    let level = ", level base: yes, fall: 1/4 in per ft south";
    assert_eq!(forms(level), [dec!(30), dec!(70)]);
    // 8 in is not over 8 in: 16 ft from the south, the far side of an opening, or past it.
    let hole = |at: u8| {
        format!(
            "{level}, cut out: [bed: {{size: 6 ft x 4 ft, at: 2 ft from west and {at} ft from south}}]"
        )
    };
    assert_eq!(forms(&hole(12)), [dec!(50), dec!(70)]);
    assert_eq!(forms(&hole(13)), [dec!(36), dec!(84)]);
}

#[test]
fn the_customer_reads_each_fall_and_step_down() {
    let parts = "  patio: {size: 20 ft x 20 ft, fall: {the half by the house: 1/4 in per ft south, the rest: 1/8 in per ft east}}\n";
    let both = "the half by the house ¼ in per ft to the south, the rest ⅛ in per ft to the east";
    assert_eq!(told(parts, "Falls").as_deref(), Some(both));
    let one = "  patio: {size: 20 ft x 20 ft, fall: 1/4 in per ft south}\n";
    assert_eq!(told(one, "Falls"), None, "the plan says it");
    let down = "  patio: {size: 20 ft x 20 ft}\n  walk: {size: 10 ft x 4 ft, beside: \"patio, west edge, 2 ft from north end\", lower: 3 in}\n";
    let lower = "walk 3 in lower than the patio";
    assert_eq!(told(down, "Levels").as_deref(), Some(lower));
}

/// The face over the lower slab is formed whatever stands there; deep only where it is higher than 8 in.
#[test]
fn a_step_down_has_a_form_of_its_own() {
    let forms = |more: &str, drop: &str| {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 20 ft x 20 ft{more}}}\n  walk: {{size: 10 ft x 4 ft, beside: \"patio, west edge, 2 ft from north end\"{drop}}}\n"
        );
        let rates = "rates:\n  form deep: 11 hours per 100 ft";
        let offer = desk(&job, BUSINESS, &with(BOOK, &[("rates:", rates)])).offer();
        ["straight form", "deep form"].map(|form| value(&offer, &format!("patio {form}")))
    };
    assert_eq!(forms("", ""), [dec!(76), dec!(0)]);
    assert_eq!(forms("", ", lower: 4 in"), [dec!(80), dec!(0)]);
    let thick = ", thickened: \"west, 12 in wide, 12 in deep\"";
    assert_eq!(forms(thick, ", lower: 8 in"), [dec!(64), dec!(16)]);
    assert_eq!(forms(thick, ", lower: 8 1/8 in"), [dec!(60), dec!(20)]);
}

/// The walk, 14 × 4 ft, has two joints of 4 ft; its edge at the patio is a joint only where both are level.
#[test]
fn no_control_joint_runs_along_the_face_of_a_step() {
    let feet = |patio: &str, drop: &str, name: &str| {
        let job = format!(
            "customer: Ira Sample\nslabs:\n  patio: {{size: 20 ft x 20 ft{patio}}}\n  walk: {{size: 4 ft x 14 ft, joints: 5 ft, sawn: yes, beside: \"patio, east edge, 2 ft from north end\"{drop}}}\n"
        );
        value(&desk(&job, BUSINESS, BOOK).offer(), name)
    };
    for name in ["walk joints", "walk sawn joints"] {
        assert_eq!(feet("", "", name), dec!(22));
        assert_eq!(feet("", ", lower: 4 in", name), dec!(8));
    }
    let face = |drop| feet("", drop, "walk sawn joint face");
    assert_eq!(places(face("") / face(", lower: 4 in"), 6), dec!(2.75));
    // The older slab's joints do not run there either: one across each way.
    let patio = ", joints: 10 ft";
    assert_eq!(feet(patio, ", lower: 4 in", "patio joints"), dec!(40));
    assert_eq!(feet(patio, ", lower: 4 in", "walk joints"), dec!(8));
}

/// The upper slab's edge is to be thickened, where the lower one lies.
#[test]
fn a_step_down_deeper_than_the_edge_names_that_edge() {
    #[track_caller]
    fn case(beside: &str, edge: &str) {
        let slabs = format!(
            "slabs:\n  patio: {{kind: slab, size: 20 ft x 20 ft}}\n  walk: {{kind: slab, size: 6 ft x 6 ft, beside: \"patio, {beside}\", lower: 6 in}}\n"
        );
        let firm = firm("step-down");
        fs::write(
            firm.path("down.yaml"),
            format!("customer: Ira Sample\n{slabs}"),
        )
        .unwrap();
        let said = firm.refused("check down.yaml", "bad-position");
        let write =
            format!("under `patio` write, for example, `thickened: {edge}, 12 in wide, 6 in deep`");
        assert!(said.contains(&write), "{said}");
    }
    case("east edge, 2 ft from north end", "east");
    case("north edge, 2 ft from west end", "north");
}

/// 20 × 10 ft, 4 in thick: 60 ft of form hold 20 sq ft.
#[test]
fn forms_go_by_the_foot_or_by_the_square_foot_of_face() {
    let job = "customer: Ira Sample\nslabs:\n  patio: {size: 20 ft x 10 ft, thickness: 4 in}\n";
    let by_foot = desk(job, BUSINESS, BOOK).offer();
    assert_eq!(value(&by_foot, "form straight work"), dec!(60));
    let rate = line(BOOK, "  form straight:");
    let book = with(BOOK, &[(&rate, "  form straight: 21 hours per 100 sq ft")]);
    let by_face = desk(job, BUSINESS, &book).offer();
    assert_eq!(places(value(&by_face, "form straight work"), 6), dec!(20));
    assert_eq!(places(value(&by_face, "form straight hours"), 6), dec!(4.2));
}

/// The line of a book that begins so.
fn line(book: &str, start: &str) -> String {
    let mut lines = book.lines();
    lines
        .find(|line| line.starts_with(start))
        .unwrap()
        .to_owned()
}

/// A third of a yard is 9 cu ft, and 45 minutes are hours: the same rate, however it is written.
#[test]
fn a_rate_in_another_unit_of_the_same_kind_is_the_same() {
    let job = "customer: Ira Sample\nslabs:\n  patio: {size: 20 ft x 10 ft, base: 4 in of crushed stone}\n";
    let rate = line(BOOK, "  base:");
    let hours = |written: &str| {
        let book = with(BOOK, &[(&rate, &format!("  base: {written}"))]);
        value(&desk(job, BUSINESS, &book).offer(), "base hours")
    };
    let usual = hours("0.75 hours per cu yd");
    assert_eq!(
        places(usual, 6),
        places(dec!(800) / dec!(324) * dec!(0.75), 6)
    );
    assert_eq!(places(hours("0.25 hours per 9 cu ft"), 6), places(usual, 6));
    assert_eq!(places(hours("45 min per cu yd"), 6), places(usual, 6));
    assert_eq!(
        places(hours("0.75 hours per 0.764554858 m3"), 6),
        places(usual, 6)
    );
    // What is delivered weighs so much, as the book says for each yard.
    let delivered = value(&desk(job, BUSINESS, BOOK).offer(), "patio crushed stone");
    assert_eq!(places(hours("1 hour per ton"), 6), places(delivered, 6));
}
