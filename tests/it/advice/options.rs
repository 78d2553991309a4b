//! Advice on what customers may choose.

use super::{EXPOSURE, Files};

#[test]
fn a_set_figure_that_an_option_would_change() {
    let option = |option: &str| {
        let set = "exposure: frost\nset:\n  finish broom hours: {to: 14, because: two people}\noptions:\n";
        Files::new().job(EXPOSURE, &format!("{set}  - Step: {{{option}}}"))
    };
    let step = "change: {patio: {finish: trowel}}, add: [clear sealer: 10 sq ft]";
    option(step).silent("set-with-option");
    option("add: [clear sealer: 10 sq ft]").silent("set-with-option");
    let walk = option("drop: [walk]").job("slabs:\n", "slabs:\n  walk: 20 ft x 4 ft\n");
    let said = walk.says(
        "set-with-option",
        "with `Step` it would be computed as 9.22 hours and not as 11.14 hours",
        "off by the difference",
    );
    assert_eq!(said, "14");
}

#[test]
fn an_option_that_costs_and_brings_nothing() {
    let job = |price: &str, feet: u32| {
        let more = format!(
            "exposure: frost\n{price}options:\n  - Bench: {{add: [clear sealer: {feet} sq ft]}}"
        );
        Files::new().job(EXPOSURE, &more)
    };
    // 40 sq ft cost more than the ten dollars up to which a price is rounded.
    let large = job("", 40);
    large.silent("free-option");
    job("price: 9000.00\n", 40).says(
        "free-option",
        "stays $9,000.00 with or without it",
        "fixes the price",
    );
    let least = large.business("minimum job: 1500.00", "minimum job: 9000.00");
    least.says("free-option", "stays $9,000.00", "the minimum job holds");
    // One costs 40 cents, and the next thousand dollars are farther away.
    let rounded = job("", 1).business("round up to: 10.00", "round up to: 1000.00");
    rounded.says("free-option", "with or without it", "rounded up anyway");
}
