//! Questions about the day, the trucks and the way to the slab.

use super::{EXPOSURE, Files, SIZE};

const FAR_BANK: &str = include_str!("../../../price-books/far-bank.yaml");

#[test]
fn the_plant_may_be_closed_on_a_sunday_or_a_holiday() {
    let on = |day: &str| Files::new().job("2026-05-01", day);
    assert_eq!(
        on("2026-05-03").says(
            "closed-day",
            "a Sunday: the crew does not work then, and the plant may be closed",
            "works: Monday to Saturday"
        ),
        "2026-05-03"
    );
    on("2026-05-25").says("closed-day", "Memorial Day", "5 U.S.C. 6103");
    // Independence Day of 2026 is a Saturday, and Friday is kept.
    on("2026-07-03").says("closed-day", "Independence Day", "restated");
    on("2026-07-02").silent("closed-day");
    on("2026-05-02").silent("closed-day");
    // A Saturday, on which the plant is open and this crew is not.
    on("2026-05-02").says(
        "day-off",
        "no working day of yours",
        "works: Monday to Saturday",
    );
    on("2026-05-01").silent("day-off");
    let off = |says: &str| Files::new().business("works: Monday to Friday", says);
    let saturday = off("works: Monday to Saturday").job("2026-05-01", "2026-05-02");
    saturday.silent("day-off");
    let closed = off("days off: 2026-04-30 to 2026-05-01");
    closed.says("day-off", "one of your days off", "take another day");
}

#[test]
fn a_pour_that_leaves_no_days_for_the_work_before_it_is_told() {
    let on = |day: &str| Files::new().job("2026-05-01", day);
    let told =
        |files: Files| files.says("days-too-few", "begins to remove, form", "take a later day");
    // 24.3 hours to dig and form and 11.8 to pour, by three people of 7¼ hours a day: two days.
    assert_eq!(told(on("2026-04-02")), "2026-04-02");
    on("2026-04-03").silent("days-too-few");
    // Forms that are inspected stand for a night, and the pour has a third day.
    let inspected = |day: &str| on(day).job(EXPOSURE, "exposure: frost\npermit: customer");
    inspected("2026-04-03").says(
        "days-too-few",
        "begins to remove and form on 2026-04-01, and the quote is of 2026-04-01",
        "take a later day",
    );
    inspected("2026-04-06").silent("days-too-few");
    // Before the quote it is told as that.
    on("2026-03-20").silent("days-too-few");
}

#[test]
fn payments_by_stage_of_a_job_that_is_formed_and_poured_on_one_day_are_told() {
    let usual = "payments of a short job:       # forms and pour on one day\n  - When you sign: 30%\n  - When the forms are off: rest\n";
    let crowd = Files::new()
        .business("people: 3", "people: 9")
        .business(usual, "")
        .job(
            "  - lawn: {size: 384 sq ft x 8 in, of: soil}",
            "  - lawn: {size: 38 sq ft x 1 in, of: soil}",
        );
    crowd.says(
        "payments-together",
        "asks for money 4 times",
        "payments of a short job",
    );
    crowd
        .clone()
        .business("people: 9", "people: 3")
        .silent("payments-together");
    Files::new()
        .business("people: 3", "people: 9")
        .silent("payments-together");
}

#[test]
fn two_mixes_on_one_day() {
    let with = |mix: &str| {
        let inside = format!("mixes:\n  inside: {{item: ready-mix 4000 air, {mix}}}\n");
        let two = Files::new().book("mixes:\n", &inside).job(
            EXPOSURE,
            "exposure: frost\nslabs:\n  slab: {size: 10 ft x 10 ft, mix: inside, edges: {north: house}}",
        );
        two.job("\nslabs:\n  patio", "\n  patio")
    };
    let two = with("strength: 4000 psi, air: 6%");
    assert_eq!(
        two.says("two-mixes", "so 2 trucks come", "common practice"),
        "exterior"
    );
    // 1.5 and 5.25 cu yd are 6.75 in one order: a delivery and the short load go.
    two.says("two-mixes", "`inside` and `exterior`", "ordering it for");
    two.clone().job(", mix: inside", "").silent("two-mixes");
    // A dearer demand that the other does not meet, either way.
    with("strength: 4500 psi, air: 5%").says("two-mixes", "2 trucks", "saves nothing");
    // Three trucks where one order takes two.
    two.job(SIZE, "size: 48 ft x 20 ft")
        .says("two-mixes", "so 3 trucks come", "common practice");
}

#[test]
fn two_pours_that_fit_on_one_day() {
    let two = |second: &str| {
        let pours = format!(
            "pour: [{{day: 2026-05-01, slabs: [patio]}}, {{day: 2026-05-08, slabs: [slab]{second}}}]"
        );
        Files::new()
            .job("pour: 2026-05-01", &pours)
            .job("edges: {north: house}}", "edges: {north: house}}\n  slab: {size: 10 ft x 10 ft, edges: {north: house}, finish: broom}")
    };
    assert_eq!(
        two("").says("one-day", "pours 1 and 2 cost", "pour both on 2026-05-01"),
        "2026-05-08"
    );
    two(", access: wheelbarrow").silent("one-day");
    Files::new().silent("one-day");
}

#[test]
fn a_buggy_needs_its_width() {
    let gate = |gate: &str| {
        let access = format!("exposure: frost\naccess: {{by: buggy, gate: {gate}}}");
        Files::new().job(EXPOSURE, &access)
    };
    assert_eq!(
        gate("35 1/2 in").says("narrow-gate", "`36 in` wide", "common practice"),
        "35 1/2 in"
    );
    gate("36 in").silent("narrow-gate");
    // The far bank says how wide its buggy is.
    let far = |width: &str| Files {
        book: FAR_BANK.to_owned(),
        ..gate(width)
    };
    far("31 in").says("narrow-gate", "`32 in` wide", "wheelbarrow");
    far("32 in").silent("narrow-gate");
    gate("30 in")
        .job("by: buggy", "by: wheelbarrow")
        .silent("narrow-gate");
}

#[test]
fn standing_trucks_are_told() {
    Files::new().silent("standing-time");
    // 5.25 cu yd: 1.3 × 60 ÷ 3 − 10 minutes a yard, at 2.50.
    let slow = Files::new().job(EXPOSURE, "exposure: frost\naccess: wheelbarrow");
    assert_eq!(
        slow.says(
            "standing-time",
            "`84 min` past the free minutes while this crew places it",
            "in the price"
        ),
        "wheelbarrow"
    );
    // Once for the job, however many pours.
    let two = slow.clone().job(
        "pour: 2026-05-01",
        "pour: [{day: 2026-05-01, slabs: [patio]}, {day: 2026-05-04, slabs: [other]}]",
    );
    let other = "{north: house}}\n  other: {kind: patio, size: 24 ft x 16 ft}";
    two.job("{north: house}}", other).says(
        "standing-time",
        "their 2 trucks stand `168 min` past the free minutes while this crew places it",
        "in the price",
    );
    slow.clone()
        .book("standing time: standing time", "standing time: none")
        .silent("standing-time");
}

#[test]
fn a_truck_for_very_little() {
    // 9.5 of 9 cu yd to a truck; 9.75 is worth a second one.
    let set = |yards: &str| {
        let set = format!(
            "exposure: frost\nset: {{exterior order: {{to: {yards}, because: measured again}}}}"
        );
        Files::new().job(EXPOSURE, &set)
    };
    set("9.5").says(
        "barely-a-load",
        "`exterior order` takes truck 2 for `0.5 cu yd` more than the others can carry",
        "0.5 cu yd less",
    );
    // 9.25 cu yd and the allowance make 10; less than 9 would not cover the drawing.
    let drawn = |size: &str, says: &str| {
        let files = Files::new().job(SIZE, size);
        files.says("barely-a-load", "truck 2", says);
    };
    drawn(
        "size: 35 ft x 20 ft",
        "still covers the drawing, and saves a truck and $",
    );
    set("9.75").silent("barely-a-load");
    set("9").silent("barely-a-load");
    Files::new().silent("barely-a-load");
}

#[test]
fn zones_are_asked_for_where_there_are_any() {
    let far = |size: &str| Files {
        book: FAR_BANK.to_owned(),
        ..Files::new().job(SIZE, size)
    };
    far(SIZE).says("no-zone", "names no zone", "hill road, north shore");
    far(SIZE)
        .job(EXPOSURE, "exposure: frost\nzone: hill road")
        .silent("no-zone");
    Files::new().silent("no-zone");
    // A zone without a charge is where the other jobs lie.
    let mut town = far(SIZE);
    town.book = town.book.replacen("zones: {", "zones: {town: none, ", 1);
    assert_ne!(town.book, FAR_BANK);
    town.silent("no-zone");
}
