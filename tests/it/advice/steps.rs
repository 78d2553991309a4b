//! Questions about steps and deep forms.

use super::{EXPOSURE, Files, SIZE};

/// A patio with a flight to the south.
fn flight(steps: &str) -> Files {
    Files::new().job(SIZE, &format!("size: 24 ft x 16 ft, steps: {{{steps}}}"))
}

#[test]
fn a_riser_can_be_climbed() {
    let tall = flight("risers: 2, rise: 7 13/16 in, tread: 12 in, from: south");
    assert_eq!(
        tall.says("tall-riser", "`7 13/16 in` at `patio`", "as restated"),
        "7 13/16 in"
    );
    flight("risers: 2, rise: 7 3/4 in, tread: 12 in, from: south").silent("tall-riser");
    // A slab upon the patio is one step.
    let step = |thick: &str| {
        Files::new().job(
            "{north: house}}",
            &format!("{{north: house}}}}\n  step: {{size: 5 ft x 3 ft, on: \"patio, north edge, 8 ft from west end\", thickness: {thick}}}"),
        )
    };
    step("8 in").says("tall-riser", "`8 in` at `step`", "local codes");
    step("7 in").silent("tall-riser");
}

#[test]
fn a_tread_holds_a_foot() {
    let shallow = flight("risers: 2, rise: 7 in, tread: 9 7/8 in, from: south");
    shallow.says("shallow-tread", "`9 7/8 in`", "deeper");
    flight("risers: 2, rise: 7 in, tread: 10 in, from: south").silent("shallow-tread");
}

#[test]
fn risers_are_alike() {
    let steps = |total: &str| {
        flight(&format!(
            "risers: 3, rise: 7 in, tread: 12 in, from: south, in all: {total}"
        ))
    };
    steps("21 in").silent("uneven-risers");
    steps("21 3/8 in").silent("uneven-risers");
    assert_eq!(
        steps("21 7/16 in").says("uneven-risers", "would be `7 7/16 in`", "3/8 in"),
        "21 7/16 in"
    );
    steps("20 9/16 in").says("uneven-risers", "would be `6 9/16 in`", "");
    steps("24 in").says("uneven-risers", "would be `10 in`", "3 risers of 8 in");
    steps("14 in").says("uneven-risers", "no room for one of them", "");
}

#[test]
fn four_risers_may_want_a_rail() {
    let steps = |risers: u32| {
        flight(&format!(
            "risers: {risers}, rise: 6 in, tread: 12 in, from: south"
        ))
    };
    steps(3).silent("handrail");
    assert_eq!(
        steps(4).says("handrail", "4 risers", "common practice"),
        "4"
    );
}

#[test]
fn deep_forms_have_a_rate() {
    let deep = |depth: &str| {
        Files::new().job(
            SIZE,
            &format!(
                "size: 24 ft x 16 ft, thickened: {{edges: all open, width: 12 in, depth: {depth}}}"
            ),
        )
    };
    let none = deep("12 in");
    assert_eq!(
        none.says("deep-form-rate", "are `1 ft` deep", "form deep"),
        "12 in"
    );
    none.book(
        "  form curved:",
        "  form deep: 14 hours per 100 ft\n  form curved:",
    )
    .silent("deep-form-rate");
    deep("8 in").silent("deep-form-rate");
}

#[test]
fn doors_stay_above_and_one_step_is_enough() {
    let meets = |what: &str| Files::new().job(SIZE, &format!("{SIZE}, meets: {{{what}}}"));
    meets("door sill: 1 15/16 in above").says(
        "low-sill",
        "not `2 in` above `patio`",
        "lay a drain",
    );
    meets("door sill: 2 in above").silent("low-sill");
    meets("old walk: flush").silent("low-sill");
    meets("porch: 7 13/16 in above").says("tall-step", "more than one step", "IRC");
    meets("porch: 7 3/4 in above").silent("tall-step");
    meets("drive: \"9 in below, ramp\"").silent("tall-step");
}

#[test]
fn a_long_flight_may_lie_on_a_slope() {
    let steps = |risers: u32| {
        flight(&format!(
            "risers: {risers}, rise: 6 in, tread: 12 in, width: 6 ft, from: south"
        ))
    };
    steps(3).silent("solid-steps");
    // 6 x 1 x 0.5 x (1 + 2 + 3) cubic feet.
    steps(4).says(
        "solid-steps",
        "the 4 steps of `patio` are counted solid down to their foot, `0.7 cu yd`",
        "bottom: 12 in thick",
    );
    let said = |bottom: &str| {
        flight(&format!(
            "risers: 4, rise: 6 in, tread: 12 in, width: 6 ft, from: south, bottom: {bottom}"
        ))
    };
    said("level").silent("solid-steps");
    said("12 in thick").silent("solid-steps");
}

const STOOP: &str = "size: 24 ft x 16 ft, stoop: solid, steps: {risers: 2, rise: 6 in, tread: 12 in, width: 6 ft, from: south}";

#[test]
fn a_stoop_at_a_house_and_a_building_go_below_frost() {
    let unknown = || Files::new().business("frost depth: 36 in", "");
    let known = |job: Files| job.business("firm:\n", "frost depth: 36 in\nfirm:\n");
    let stoop = unknown().job(SIZE, STOOP);
    stoop.says(
        "frost-depth-unsaid",
        "the house stands beside `patio`",
        "frost depth: 36 in",
    );
    stoop
        .clone()
        .job(EXPOSURE, "exposure: mild")
        .silent("frost-depth-unsaid");
    known(stoop.clone()).says(
        "above-frost",
        "the ground freezes `36 in` deep",
        "not included",
    );
    known(stoop.job(", edges: {north: house}", "")).silent("above-frost");
    let edge = |deep: &str, more: &str| {
        unknown().job(
            SIZE,
            &format!("{SIZE}, {more}thickened: {{edges: all open, width: 12 in, depth: {deep}}}"),
        )
    };
    edge("12 in", "inside: yes, ").says(
        "frost-depth-unsaid",
        "a building stands on the thick edge of `patio`",
        "",
    );
    known(edge("35 in", "inside: yes, ")).says("above-frost", "goes `2 ft 11 in` down", "");
    known(edge("36 in", "inside: yes, ")).silent("above-frost");
    // No building stands on a patio.
    known(edge("12 in", "")).silent("above-frost");
    edge("12 in", "").silent("frost-depth-unsaid");
}
