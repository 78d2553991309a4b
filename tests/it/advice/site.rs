//! Questions about boxes, siding, water, the public, and the answers about the site.

use super::{Files, SIZE};

const EDGES: &str = "edges: {north: house}";

fn with_box(kind: &str, box_keys: &str, place: &str) -> Files {
    Files::new()
        .book(
            "items:\n",
            "items:\n  cover: {unit: piece, class: material, prices: {2026-03-01: 40.00}}\n",
        )
        .book(
            "  step: 5 hours per piece\n",
            "  step: 5 hours per piece\n  set box: 1 hour per piece\n",
        )
        .book(
            "supply:",
            &format!(
                "boxes: {{cleanout: {{item: cover, opening: 8 in round, {box_keys}}}}}\nsupply:"
            ),
        )
        .job(
            "patio: {size: 24 ft x 16 ft, edges: {north: house}}",
            &format!("{kind}: {{size: 24 ft x 16 ft, {EDGES}, boxes: [cleanout: {place}]}}"),
        )
}

/// In the middle of the north-western panel, more than a foot from any joint.
const CLEAR: &str = "4 ft from west and 4 ft from north";

#[test]
fn wheels_ask_for_a_box_made_for_wheels() {
    let driveway = |keys: &str| with_box("driveway", keys, CLEAR);
    driveway("stands for: walk, rated: 20800 lb").says(
        "box-not-for-vehicles",
        "stands for people",
        "made for wheels",
    );
    driveway("stands for: vehicle").says("box-load-unknown", "nobody says", "`design load`");
    driveway("stands for: vehicle, design load: 22500 lb, says: Tier 22").says(
        "box-tier",
        "`Tier 22` is for traffic that strays",
        "ANSI/SCTE 77 (2023), scope",
    );
    let sound = driveway("stands for: vehicle, rated: 20800 lb, says: H-20");
    for code in ["box-not-for-vehicles", "box-load-unknown", "box-tier"] {
        sound.silent(code);
        with_box("patio", "stands for: walk", CLEAR).silent(code);
    }
}

#[test]
fn a_public_walk_asks_for_eight_thousand_pounds() {
    let walk = |load: &str| {
        with_box("walk", &format!("design load: {load}"), CLEAR).job(EDGES, "public: yes")
    };
    walk("7999 lb").says(
        "box-public-walk",
        "`7,999 lb`",
        "ANSI/SCTE 77, table of 2013",
    );
    walk("8000 lb").silent("box-public-walk");
}

#[test]
fn a_box_leaves_concrete_around_it_and_meets_the_joints() {
    let at = |place: &str| with_box("patio", "depth: 4 in", place);
    // Four inches of radius and six of concrete.
    at("10 in from west and 4 ft from north").silent("box-near-edge");
    at("9 3/4 in from west and 4 ft from north").says("box-near-edge", "`6 in`", "practice");
    // Where the program lays joints out they run to the box; here their owner draws one.
    at("6 ft 9 in from west and 4 ft from north").silent("box-off-joint");
    let drawn = |place: &str| at(place).job(EDGES, "joints at: 8 ft from west");
    drawn("6 ft 6 in from west and 4 ft from north").silent("box-off-joint");
    drawn("7 ft from west and 4 ft from north").says("box-off-joint", "`8 in`", "practice");
    drawn("7 ft 10 in from west and 4 ft from north").silent("box-off-joint");
    with_box("patio", "depth: 4 in", CLEAR).silent("box-shallow");
    let shallow = with_box("patio", "depth: 3 in", CLEAR);
    shallow.says("box-shallow", "`3 in` deep", "practice");
    // A pocket for a post ends in the concrete.
    shallow
        .book("cleanout:", "post pocket:")
        .job("cleanout:", "post pocket:")
        .silent("box-shallow");
}

#[test]
fn siding_stays_two_inches_above_paving() {
    let siding =
        |clearance: &str| Files::new().job(SIZE, &format!("{SIZE}, siding clearance: {clearance}"));
    siding("1 15/16 in").says("siding-close", "`2 in` is asked for", "R703.6.2.1");
    siding("2 in").silent("siding-close");
}

#[test]
fn water_runs_away_from_the_house() {
    let fall = |fall: &str| Files::new().job(SIZE, &format!("{SIZE}, fall: {fall}"));
    fall("1/4 in per ft north").says("falls-to-house", "falls north to a house", "R401.3");
    fall("1/4 in per ft south").silent("falls-to-house");
    // By what was shot at its corners: toward the house in all, or along one side.
    let shot = |west: &str, east: &str| {
        let levels =
            format!("{{northwest: 0, northeast: 0, southwest: {west}, southeast: {east}}}");
        Files::new().job(SIZE, &format!("{SIZE}, levels: {levels}"))
    };
    shot("4 in down", "4 in down").silent("falls-to-house");
    shot("4 in up", "4 in up").says("falls-to-house", "falls north to a house", "R401.3");
    shot("9 in down", "1 in up").says("falls-to-house", "falls 1 in to a house along", "R401.3");
    shot("4 in down", "4 1/2 in down").silent("warped");
    shot("4 in down", "6 in down").says("warped", "is 1/2 in", "may be warped");
    // 2% of a foot is 0.24 in.
    fall("0.24 in per ft").silent("flat-at-house");
    fall("0.239 in per ft").says("flat-at-house", "only", "2% or more");
    // A fall that runs nowhere is asked about at a house only.
    let (unsaid, which) = (fall("1/4 in per ft"), "nothing says which way");
    unsaid.says("fall-unsaid", which, "`fall: 1/4 in per ft south`");
    unsaid
        .job(EDGES, "edges: {north: curb}")
        .silent("fall-unsaid");
    fall("1/4 in per ft west").silent("fall-unsaid");
    // Nobody says which part is at the house: one that is steep enough will do.
    let parts = |one, other| {
        fall(&format!(
            "{{by the gate: {one} per ft south, the rest: {other} per ft east}}"
        ))
    };
    parts("1/8 in", "1/4 in").silent("flat-at-house");
    let flat = "`patio` meets a house and falls nowhere more than `3/16 in per ft`";
    parts("1/8 in", "3/16 in").says("flat-at-house", flat, "2% or more");
    fall("level").says("flat-at-house", "is level", "2% or more");
    fall("level")
        .job(EDGES, "edges: {north: curb}")
        .silent("flat-at-house");
}

/// 2.00% and 1:48 are within, 2.084% is not.
#[test]
fn a_public_walk_falls_one_in_forty_eight_across_at_most() {
    let walk = |across: &str| {
        Files::new().job(
            "patio: {size: 24 ft x 16 ft, edges: {north: house}}",
            &format!("walk: {{size: 24 ft x 5 ft, public: yes{across}}}"),
        )
    };
    for fine in ["2.00%", "2.083%", "1:48", "1/4 in per ft", "1/8 in per ft"] {
        let walk = walk(&format!(", cross fall: {fine}"));
        walk.silent("steep-across");
        walk.silent("flat-across");
        walk.silent("no-cross-fall");
    }
    for steep in ["2.084%", "1:47.995", "3/8 in per ft"] {
        let at = walk(&format!(", cross fall: {steep}")).says("steep-across", "1:48", "403.3");
        assert_eq!(at, steep);
    }
    walk(", cross fall: 1%").says("flat-across", "too flat", "1/8 in per ft");
    // The usual fall of a walk serves, unless it runs along it.
    walk("").silent("no-cross-fall");
    walk(", fall: 1/2 in per ft south").says("steep-across", "1:48", "");
    walk(", fall: 1/2 in per ft east").says("no-cross-fall", "nobody says", "cross fall");
    walk(", fall: level").says("no-cross-fall", "nobody says", "cross fall");
}

#[test]
fn a_public_slope_over_one_in_twenty_is_a_ramp() {
    let ramp = |size: &str, fall: &str| {
        Files::new().job(
            "patio: {size: 24 ft x 16 ft, edges: {north: house}}",
            &format!("walk: {{size: {size}, public: yes, cross fall: 1:48, fall: {fall} east}}"),
        )
    };
    ramp("24 ft x 5 ft", "1:20").silent("public-ramp");
    let long = ramp("24 ft x 5 ft", "1:19.9");
    long.says(
        "public-ramp",
        "rises `14.5 in` over `24 ft`",
        "rails on both sides",
    );
    // 6 in asks for none, a hair more does.
    let said = |size: &str, fall: &str| {
        let all = ramp(size, fall).all();
        let found = all.into_iter().find(|(one, _)| one.code == "public-ramp");
        found.unwrap().0.help.unwrap()
    };
    assert!(!said("6 ft x 5 ft", "1:12").contains("rails"));
    assert!(said("6 ft 1 in x 5 ft", "1:12").contains("rails"));
    assert!(!said("30 ft x 5 ft", "1:12").contains("another"));
    assert!(
        said("30 ft 1 in x 5 ft", "1:12").contains("another before it has risen more than 30 in")
    );
    assert!(!said("30 ft x 5 ft", "1:12").contains("405.2"));
    assert!(
        said("30 ft x 5 ft", "1:11.9")
            .contains("1:12 is the steepest; source: 2010 ADA Standards, 405.2")
    );
    // Across the way it is no ramp, and a garden walk is nobody's business.
    ramp("5 ft x 24 ft", "1:12").silent("public-ramp");
    ramp("24 ft x 5 ft", "1:12")
        .job("public: yes, cross fall: 1:48, ", "")
        .silent("public-ramp");
}

#[test]
fn answers_about_the_site_are_looked_at() {
    let site = |answers: &str| {
        Files::new().job(
            "exposure: frost\n",
            &format!("exposure: frost\nsite: {{{answers}}}\n"),
        )
    };
    site("overhead wires: 16 ft").says("overhead-wires", "`16 ft`", "29 CFR 1926.1408");
    site("overhead wires: no").silent("overhead-wires");
    site("truck over: septic tank").says("septic-tank", "septic", "practice");
    site("truck over: driveway").silent("septic-tank");
    site("lines marked: no").says("lines-not-marked", "not marked yet", "811");
    site("lines marked: yes").silent("lines-not-marked");
    site("washout: hauled").says("site-unpriced", "`washout` is ours", "under `site`");
    site("washout: on site").silent("site-unpriced");
}

#[test]
fn the_public_way_asks_about_a_permit() {
    let apron = Files::new().job("patio:", "apron:");
    apron.says(
        "permit-to-ask",
        "where the public passes",
        "permit: customer",
    );
    apron
        .job("exposure: frost\n", "exposure: frost\npermit: none\n")
        .silent("permit-to-ask");
    Files::new().silent("permit-to-ask");
}

#[test]
fn a_job_that_digs_nothing_is_asked_about_it() {
    let lawn = "  - lawn: {size: 384 sq ft x 8 in, of: soil}";
    let slab = "  - old slab: 10 ft x 10 ft x 4 in";
    Files::new().job(lawn, slab).says(
        "nothing-dug",
        "concrete and base take `9.5 cu yd`",
        "`remove: [soil: {under: [patio], depth: 8 in, of: soil}]`; if the ground is ready",
    );
    // One entry for each depth, up to the inch: 4 in of concrete on 4 in, and on 2 1/2 in.
    let three = "edges: {north: house}}\n  walk: {size: 4 ft x 4 ft, base: 2 1/2 in of crushed stone}\n  slab: {size: 4 ft x 4 ft, base: 3 1/2 in of crushed stone";
    Files::new()
        .job(lawn, slab)
        .job("edges: {north: house}", three)
        .says(
            "nothing-dug",
            "concrete and base take",
            "`remove: [soil under patio: {under: [patio, slab], depth: 8 in, of: soil}, soil under walk: {under: [walk], depth: 7 in, of: soil}]`",
        );
    // A slab without a base may lie on what is there.
    Files::new()
        .job(lawn, slab)
        .job("edges: {north: house}", "base: none, edges: {north: house}")
        .silent("nothing-dug");
    // What stands on a slab lies on no soil, whatever is under it.
    Files::new()
        .job(lawn, slab)
        .job(
            "edges: {north: house}",
            "base: none, edges: {north: house}}\n  step: {kind: step, size: 4 ft x 2 ft, on: \"patio, south edge, 2 ft from west end\", base: 4 in of crushed stone",
        )
        .silent("nothing-dug");
}

#[test]
fn a_job_that_digs_less_than_half_of_its_ground_is_asked_about_it() {
    // The patio covers 384 sq ft.
    let lawn = "{size: 384 sq ft x 8 in, of: soil}";
    let files = Files::new().job(lawn, "{size: 191 sq ft x 8 in, of: soil}");
    files.says(
        "little-dug",
        "slabs with a base cover `384 sq ft`",
        "under: [patio]",
    );
    let files = Files::new().job(lawn, "{size: 192 sq ft x 8 in, of: soil}");
    files.silent("little-dug");
    let files = Files::new().job(lawn, "{under: [patio], depth: 8 in, of: soil}");
    files.silent("little-dug");
    files.silent("nothing-dug");
}

#[test]
fn a_pour_before_its_quote_is_a_slip_of_the_year() {
    Files::new()
        .job("pour: 2026-05-01", "pour: 2026-03-31")
        .says(
            "past-pour",
            "before the quote of `2026-04-01`",
            "is the year right",
        );
    Files::new()
        .job("pour: 2026-05-01", "pour: 2026-04-01")
        .silent("past-pour");
}

#[test]
fn a_pour_in_the_cold_wants_blankets() {
    let winter = |pour: &str| {
        Files::new()
            .normals("")
            .book(
                "  pump prime: 1/4 cu yd",
                "  pump prime: 1/4 cu yd\n  winter: {item: delivery, during: 12-01 to 03-15}",
            )
            .job("pour: 2026-05-01", pour)
    };
    let december = winter("pour: 2026-12-01");
    assert_eq!(
        december.says(
            "cold-pour",
            "nights are `35 °F` on `2026-12-01`",
            "`blankets` under `use`"
        ),
        "2026-12-01"
    );
    winter("pour: 2026-11-30").silent("cold-pour");
    let blankets = |files: Files| files.book("\n  trip:", "\n  blankets: none\n  trip:");
    blankets(december.clone()).silent("cold-pour");
    december
        .job(SIZE, "inside: yes, size: 24 ft x 16 ft")
        .silent("cold-pour");
    // A month's own normals go before the plant's winter.
    let normal = |nights: &str| {
        let december = format!("  normals: {{december: {nights} to 60 F}}\n");
        winter("pour: 2026-12-01").business("cure:\n", &format!("cure:\n{december}"))
    };
    normal("40").silent("cold-pour");
    normal("39").says("cold-pour", "`39 °F`", "ACI 306R-16");
    normal("39")
        .business("cure:\n", "cure:\n  cold below: 39\n")
        .silent("cold-pour");
    normal("39")
        .job(SIZE, "curing: wet, size: 24 ft x 16 ft")
        .says("wet-in-the-cold", "`patio` is kept wet", "water freezes");
    normal("40")
        .job(SIZE, "curing: wet, size: 24 ft x 16 ft")
        .silent("wet-in-the-cold");
}

#[test]
fn a_pour_in_the_heat_wants_care() {
    let may = |days: &str| Files::new().normals(&format!("  normals: {{may: 60 to {days} F}}\n"));
    may("85").silent("hot-pour");
    may("86").says("hot-pour", "days are `86 °F` on `2026-05-01`", "over 95 °F");
    Files::new().silent("hot-pour");
}

#[test]
fn a_wheelbarrow_needs_its_gate() {
    let gate = |gate: &str| {
        Files::new().job(
            "exposure: frost",
            &format!("exposure: frost\naccess: {{by: wheelbarrow, distance: 40 ft, gate: {gate}}}"),
        )
    };
    assert_eq!(
        gate("29 in").says("narrow-gate", "a wheelbarrow needs about `30 in`", "pump"),
        "29 in"
    );
    gate("30 in").silent("narrow-gate");
}
