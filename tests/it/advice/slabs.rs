//! Questions about the slabs: joints, mix, steel, what they meet.

use super::{EXPOSURE, Files, SIZE};

#[test]
fn joints_stand_by_the_thickness_and_the_stone() {
    // 30 thicknesses of 4 in with stone of 3/4 in are 10 ft.
    let far = Files::new().job(SIZE, "size: 22 ft x 22 ft, joints: 11 ft");
    assert_eq!(
        far.says("joints-far-apart", "`10 ft`", "NRMCA CIP 6"),
        "11 ft"
    );
    let near = Files::new().job(SIZE, "size: 20 ft x 20 ft, joints: 10 ft");
    near.silent("joints-far-apart");
    // 24 thicknesses with smaller stone are 8 ft.
    near.book("aggregate: 3/4 in", "aggregate: 1/2 in").says(
        "joints-far-apart",
        "`8 ft`",
        "restated",
    );
    // The cap bites at 6 in and over.
    Files::new()
        .job(SIZE, "size: 32 ft x 32 ft, joints: 16 ft, thickness: 8 in")
        .says("joints-far-apart", "`15 ft`", "");
}

#[test]
fn walks_have_a_spacing_of_their_own() {
    let walk = Files::new().job(
        "patio: {size: 24 ft x 16 ft",
        "walk: {size: 18 ft x 6 ft, joints: 6 ft",
    );
    walk.says("joints-far-apart", "`5 ft`", "UFGS");
}

#[test]
fn a_large_slab_wants_joints() {
    Files::new()
        .job(SIZE, "size: 16 ft x 16 ft, joints: none")
        .says("no-joints", "`16 ft` long", "joints: 10 ft");
    Files::new()
        .job(SIZE, "size: 10 ft x 10 ft, joints: none")
        .silent("no-joints");
}

#[test]
fn panels_are_nearly_square() {
    // Six by seven is well shaped.
    Files::new()
        .job(SIZE, "size: 6 ft x 7 ft, joints: 8 ft")
        .silent("long-panel");
    // A pad of one panel is none, and a long one is cut before anybody asks.
    for size in ["8 ft x 6 ft", "24 ft x 4 ft"] {
        let job = format!("size: {size}, joints: 8 ft");
        Files::new().job(SIZE, &job).silent("long-panel");
    }
    // Two feet by six, and ten by six: the owner draws them.
    Files::new()
        .job(SIZE, "size: 12 ft x 6 ft, joints at: 2 ft from west")
        .says("long-panel", "`3` times as long as wide", "draw one more");
}

#[test]
fn the_groove_is_a_quarter_deep() {
    // Nobody knows the tool.
    Files::new().silent("groove-depth");
    let tool = |depth: &str| {
        let order = format!("order:\n  groove depth: {depth}");
        Files::new().business("order:", &order)
    };
    tool("3/4 in").says("groove-depth", "`1 in` deep in `4 in`", "quarter");
    tool("1 in").silent("groove-depth");
    let thick = tool("1 in").job(SIZE, "size: 16 ft x 16 ft, thickness: 6 in");
    thick.says("groove-depth", "`1 1/2 in`", "UFGS");
    // One panel has no joint.
    thick
        .job("size: 16 ft x 16 ft", "size: 8 ft x 8 ft")
        .silent("groove-depth");
}

#[test]
fn the_mix_stands_the_weather() {
    Files::new()
        .job(EXPOSURE, "exposure: salt")
        .says("weak-mix", "4,500 psi", "ACI 332-14");
    let weak = Files::new().book("strength: 4000 psi", "strength: 3000 psi");
    weak.says("weak-mix", "3,500 psi", "IBC");
    weak.job(EXPOSURE, "exposure: mild").silent("weak-mix");
    Files::new().silent("weak-mix");
}

#[test]
fn air_stands_against_frost() {
    let dry = Files::new().book("air: 6%", "air: 5%");
    dry.says("little-air", "`6%`", "common practice");
    dry.job(EXPOSURE, "exposure: mild").silent("little-air");
    Files::new().silent("little-air");
}

#[test]
fn three_stones_fit_in_the_slab() {
    let stone = Files::new().book("aggregate: 3/4 in", "aggregate: 1 1/2 in");
    stone.says("large-stone", "`1 1/2 in`", "1 in or less");
    stone
        .job(SIZE, "size: 16 ft x 16 ft, thickness: 4.5 in")
        .silent("large-stone");
}

#[test]
fn bars_need_room() {
    let thin = Files::new().job(SIZE, "size: 16 ft x 16 ft, thickness: 3 in");
    thin.says("no-room-for-bars", "leave `3/4 in` below", "footings");
    thin.job("thickness: 3 in", "thickness: 3 in, bars: none")
        .silent("no-room-for-bars");
    Files::new().silent("no-room-for-bars");
}

#[test]
fn vehicles_park_on_steel() {
    let drive = Files::new().job("patio: {size", "driveway: {size");
    drive.silent("steel-under-vehicle");
    drive
        .clone()
        .job(SIZE, "size: 16 ft x 16 ft, bars: none")
        .says("steel-under-vehicle", "no bars", "no source");
    drive
        .job(SIZE, "size: 16 ft x 16 ft, bars: no. 4 at 30 in")
        .says("steel-under-vehicle", "2 ft 6 in", "2 ft or less");
}

#[test]
fn a_patio_usually_meets_a_house() {
    let free = Files::new().job(", edges: {north: house}", "");
    assert_eq!(
        free.says("no-isolation", "no edge of `patio`", "CIP 6"),
        "patio"
    );
    free.job("patio: {size", "walk: {size")
        .silent("no-isolation");
    Files::new().silent("no-isolation");
}

#[test]
fn a_barrow_goes_a_hundred_feet() {
    let far = Files::new().job(EXPOSURE, "access: {by: wheelbarrow, distance: 101 ft}");
    far.says("long-barrow-run", "`101 ft`", "common practice, no source");
    far.clone()
        .job("101 ft", "100 ft")
        .silent("long-barrow-run");
    far.job("wheelbarrow", "buggy").silent("long-barrow-run");
}

#[test]
fn cars_stand_on_four_inches() {
    let thick = |kind: &str, thickness: &str| {
        let slab = format!("{SIZE}, thickness: {thickness}");
        Files::new()
            .job("patio: {size", &format!("{kind}: {{size"))
            .job(SIZE, &slab)
    };
    thick("driveway", "4 in").silent("thin-slab");
    thick("driveway", "3 7/8 in").says("thin-slab", "under cars", "no source");
    thick("patio", "3 1/2 in").silent("thin-slab");
    thick("patio", "3 7/16 in").says("thin-slab", "under people", "3 1/2 in or thicker");
    // Nothing is lighter than people.
    thick("patio", "3 in").says(
        "thin-slab",
        "under people",
        "or thicker; source: IBC 1910.1",
    );
    // A patio that cars cross is no patio to its concrete.
    let cars =
        |thickness: &str| thick("patio", thickness).job(SIZE, "carries: cars, size: 24 ft x 16 ft");
    cars("3 7/8 in").says(
        "thin-slab",
        "under cars",
        "4 in or thicker, or write `carries: people`",
    );
    cars("4 in").silent("thin-slab");
    let trucks = |thickness: &str| {
        thick("driveway", thickness).job(SIZE, "called: RV parking, size: 24 ft x 16 ft")
    };
    trucks("5 7/8 in").says(
        "thin-slab",
        "under trucks",
        "6 in or thicker, or write `carries: cars`",
    );
    trucks("6 in").silent("thin-slab");
}

#[test]
fn a_floor_inside_has_no_frost_and_no_rain() {
    let dry = Files::new().book("air: 6%", "air: 0%");
    dry.says("little-air", "`6%`", "`inside: yes`");
    let inside = dry.job(SIZE, "size: 24 ft x 16 ft, inside: yes, fall: level");
    inside.silent("little-air");
    inside.silent("flat-at-house");
    // A sheet under it tells the same, unless the owner says otherwise.
    let sheet = |more: &str| {
        let size = format!("{SIZE}, vapor retarder: yes, fall: level{more}");
        Files::new()
            .book("\n  trip:", "\n  vapor retarder: none\n  trip:")
            .book(
                "rates: ",
                "rates:\n  vapor retarder: 4 hours per 100 sq ft\n#",
            )
            .job(SIZE, &size)
    };
    sheet("").silent("flat-at-house");
    sheet(", inside: no").says("flat-at-house", "is level", "2% or more");
}

#[test]
fn a_floor_inside_is_asked_for_less_strength() {
    let weak = |psi: &str, slab: &str| {
        Files::new()
            .job(EXPOSURE, "exposure: salt")
            .book("strength: 4000 psi", &format!("strength: {psi} psi"))
            .job(SIZE, &format!("{SIZE}, {slab}"))
    };
    weak("2500", "inside: yes").silent("weak-mix");
    weak("2499", "inside: yes").says("weak-mix", "2,500 psi", "IBC");
    // Cars bring salt and frost in.
    weak("3500", "inside: yes, carries: cars").silent("weak-mix");
    weak("3499", "inside: yes, carries: cars").says("weak-mix", "3,500 psi", "IRC");
    weak("4499", "carries: cars").says(
        "weak-mix",
        "4,500 psi",
        "ACI 332-14, class RF3 (as restated elsewhere) asked 4,000 psi",
    );
}

#[test]
fn what_is_said_of_several_slabs_is_said_once() {
    let walks = "patio: {size: 24 ft x 16 ft, thickness: 3 in, edges: {north: house}}\n  east: {kind: walk, size: 4 ft x 4 ft, thickness: 3 in}\n  west: {kind: walk, size: 4 ft x 4 ft, thickness: 2 in}";
    let three = Files::new().job("patio: {size: 24 ft x 16 ft, edges: {north: house}}", walks);
    three.says(
        "thin-slab",
        "`patio` is `3 in` thick, under people; look at `east` and `west` for the same",
        "",
    );
    // Joints too: two walks of 12 ft by 6 ft with panels of 6 ft.
    let walks = "patio: {size: 24 ft x 16 ft, edges: {north: house}}\n  east: {kind: walk, size: 12 ft x 6 ft, joints: 6 ft}\n  west: {kind: walk, size: 6 ft x 12 ft, joints: 6 ft}";
    Files::new()
        .job("patio: {size: 24 ft x 16 ft, edges: {north: house}}", walks)
        .says(
            "joints-far-apart",
            "panels of `east` are up to `6 ft` long; `5 ft` is the most for a slab `4 in` thick; so with `west`",
            "write `joints: 5 ft` or less",
        );
    // In the very same words it is the very same.
    three.job("thickness: 2 in", "thickness: 3 in").says(
        "thin-slab",
        "thick, under people; so with `east` and `west`",
        "",
    );
}

#[test]
fn a_pad_stands_free() {
    let free = Files::new().job(", edges: {north: house}", "");
    free.says("no-isolation", "no edge of `patio`", "CIP 6");
    free.job(SIZE, "called: shed pad, size: 24 ft x 16 ft")
        .silent("no-isolation");
}

#[test]
fn a_chute_reaches_eighteen_feet() {
    let chute =
        |far: &str| Files::new().job(EXPOSURE, &format!("access: {{by: chute, distance: {far}}}"));
    chute("18 ft").silent("chute-too-short");
    let far = chute("18 ft 1 in");
    let at = far.says(
        "chute-too-short",
        "`18 ft 1 in` from the truck, and a chute reaches about `18 ft`",
        "`by: wheelbarrow`",
    );
    assert_eq!(at, "18 ft 1 in");
    // No wheelbarrow comes through, and nobody has a pump: it is told all the same.
    far.job("access: {", "access: {gate: 20 in, ")
        .book("  pump: concrete pump\n", "")
        .says("chute-too-short", "a chute reaches", "no other way");
}

#[test]
fn steel_at_a_pool_is_bonded() {
    Files::new().silent("pool-bonding");
    let pool = Files::new().job(SIZE, "called: pool deck, size: 24 ft x 16 ft");
    pool.says(
        "pool-bonding",
        "`patio` lies at a pool",
        "licensed electrician",
    );
    Files::new()
        .job(SIZE, "called: pooled water, size: 24 ft x 16 ft")
        .silent("pool-bonding");
}

#[test]
fn what_is_promised_can_be_kept() {
    let salt = |psi: &str| {
        Files::new()
            .job(EXPOSURE, "exposure: salt")
            .book("strength: 4000 psi", &format!("strength: {psi} psi"))
            .business("scaling where no salt was used, or", "scaling, or")
    };
    salt("4499").says("promise-scaling", "`4,499 psi`", "ACI 332-20, class RF3");
    salt("4500").silent("promise-scaling");
    Files::new().silent("promise-scaling");
    salt("4499")
        .business("scaling, or settling", "settling")
        .silent("promise-scaling");
    salt("4499")
        .business("scaling, or", "scaling where no salt was used, or")
        .silent("promise-scaling");
    let cracks = |promise: &str| {
        Files::new().business("scaling where no salt was used, or settling", promise)
    };
    cracks("cracks of 1/4 in, or settling").silent("promise-cracks");
    Files::new()
        .business(
            "We repair scaling where no salt was used, or settling of 3/4 in or more, for 2 years.",
            "We repair every crack.",
        )
        .says("promise-cracks", "says no width", "1/4 in");
}
