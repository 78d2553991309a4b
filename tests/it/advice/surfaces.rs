//! Questions about finishes, colors and sealers.

use super::{Files, SIZE};

const ITEMS: &str = "items:\n  color: {unit: lb, class: material, prices: {2026-03-01: 1.80}}\n  sealer: {unit: gal, class: material, prices: {2026-03-01: 38.00}}\n";
const SURFACES: &str = "colors:\n  sandstone: {item: color, dose: 5 lb per cu yd}\n  slate: {item: color, dose: 3 lb per cu yd}\nsealers:\n  clear: {item: sealer, coverage: 250 sq ft per gal}\nfinishes:\n  hard: {hours: 4 hours per 100 sq ft, troweled: yes}\n  trowel swirl: {hours: 4 hours per 100 sq ft, troweled: no}\n\nuse:";

/// The sound job, its book with colors and a sealer.
fn files() -> Files {
    Files::new()
        .book("items:\n", ITEMS)
        .book("\nuse:", &format!("\n{SURFACES}"))
}

#[test]
fn a_trowel_closes_no_surface_over_much_air() {
    let trowel = files().job(SIZE, "size: 24 ft x 16 ft, finish: trowel");
    let at = trowel.says("air-under-trowel", "`6%` air", "ACI 302.1R-15");
    assert_eq!(at, "trowel");
    trowel
        .clone()
        .book("air: 6%", "air: 3%")
        .silent("air-under-trowel");
    trowel
        .book("air: 6%", "air: 3.1%")
        .says("air-under-trowel", "over 3%", "never freezes");
    files().job(SIZE, "size: 24 ft x 16 ft, finish: hard").says(
        "air-under-trowel",
        "the finish `hard`",
        "",
    );
    files()
        .job(SIZE, "size: 24 ft x 16 ft, finish: trowel swirl")
        .silent("air-under-trowel");
    files().silent("air-under-trowel");
}

#[test]
fn a_sealer_and_a_color_want_no_compound() {
    let sealed = files().job(SIZE, "size: 24 ft x 16 ft, seal: clear");
    sealed.says("compound-in-the-way", "does not hold", "maker");
    let wet = sealed.job("seal: clear", "seal: clear, curing: wet");
    wet.silent("compound-in-the-way");
    let colored = files().job(SIZE, "size: 24 ft x 16 ft, color: sandstone");
    colored.says(
        "compound-in-the-way",
        "spotted",
        "common practice, no source",
    );
    colored
        .job("color: sandstone", "color: sandstone, curing: cover")
        .book(
            "curing compound: curing compound",
            "curing compound: none\n  curing cover: none",
        )
        .silent("compound-in-the-way");
    files().silent("compound-in-the-way");
}

#[test]
fn two_colors_on_one_day_are_two_orders() {
    let two = files().job(
        "slabs:\n",
        "slabs:\n  walk: {size: 20 ft x 5 ft, color: sandstone}\n",
    );
    two.says(
        "two-colors",
        "`exterior sandstone order` and `exterior order`",
        "lighter",
    );
    two.silent("two-mixes");
    let both = two
        .clone()
        .job(SIZE, "size: 24 ft x 16 ft, color: sandstone");
    both.silent("two-colors");
    two.job(SIZE, "size: 24 ft x 16 ft, color: slate").says(
        "two-colors",
        "`exterior slate order` and `exterior sandstone order`",
        "",
    );
    files().silent("two-colors");
}
