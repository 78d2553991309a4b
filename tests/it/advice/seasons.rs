//! Questions about the time of the year: what has no roof yet, what is kept wet or sealed in the cold.

use super::{Files, SIZE};

/// With nights and days of May, and of June when a sealer may go on.
fn may(nights: u32, june: u32) -> Files {
    let normals = format!("  normals: {{may: {nights} to 60 F, june: 30 to {june} F}}\n");
    let files = Files::new().normals(&normals);
    files.book("\n  trip:", "\n  blankets: none\n  trip:")
}

#[test]
fn what_is_inside_by_its_kind_alone_may_have_no_roof_yet() {
    let garage = |said: &'static str| {
        let garage = "joints: 10 ft, fall: level}\n  garage: {thickness: 4 in, mix: exterior, finish: broom, joints: 10 ft}\n";
        move |nights: u32| {
            may(nights, 60)
                .business("joints: 10 ft, fall: 1/4 in per ft south}\n", garage)
                .job(SIZE, &format!("{SIZE}, kind: garage, called: floor{said}"))
        }
    };
    let unsaid = garage("");
    unsaid(39).says("no-roof-yet", "`patio` counts as inside", "`inside: no`");
    unsaid(40).silent("no-roof-yet");
    for said in [", inside: yes", ", inside: no"] {
        garage(said)(39).silent("no-roof-yet");
    }
    may(39, 60).silent("no-roof-yet");
}

#[test]
fn an_option_that_is_wrong_in_the_cold_is_named() {
    let with = |nights: u32, what: &str| {
        let option = format!("options:\n  - Other: {{change: {{patio: {{{what}}}}}}}\nremove:\n");
        may(nights, 60).job("remove:\n", &option)
    };
    let code = "wet-in-the-cold";
    let wet = "curing: wet";
    with(39, wet).says(code, "with `Other`: `patio` is kept wet", "water freezes");
    with(40, wet).silent(code);
    // What is wrong as quoted is told once, and without it.
    let always = with(39, "finish: trowel").job(SIZE, &format!("{SIZE}, {wet}"));
    always.says(code, "`patio` is kept wet", "water freezes");
    let all = always.all();
    assert!(
        all.iter()
            .all(|(one, _)| one.code != code || !one.message.contains("with"))
    );
}

#[test]
fn sealers_want_fifty_degrees() {
    let sealed = |june: u32, keys: &str| {
        may(45, june)
            .book("\nuse:", "\nsealers:\n  clear: {item: curing compound, coverage: 250 sq ft per gal, after: 31 days}\nuse:")
            .job(SIZE, &format!("{SIZE}, seal: clear, curing: none{keys}"))
    };
    let words = "`patio` may be sealed from `2026-06-01`, and days are `49 °F` then";
    sealed(49, "").says("cold-seal", words, "50 °F and a dry surface");
    sealed(50, "").silent("cold-seal");
    sealed(49, ", inside: yes").silent("cold-seal");
}
