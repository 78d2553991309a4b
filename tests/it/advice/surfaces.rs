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
    trowel.clone().book("air: 6%", "air: 3.1%").says(
        "air-under-trowel",
        "over 3%",
        "here the air matters: keep it",
    );
    // Either answer ends it: no slab is told to have both more air and less.
    let dry = trowel.clone().book("air: 6%", "air: 2%");
    dry.says("little-air", "`6%`", "leave the steel trowel off");
    dry.silent("air-under-trowel");
    let inside = trowel.clone().job(SIZE, "inside: yes, size: 24 ft x 16 ft");
    inside.says("air-under-trowel", "over 3%", "order it without added air;");
    inside.silent("little-air");
    let garage = inside.job("inside: yes", "inside: yes, carries: cars");
    garage.says(
        "air-under-trowel",
        "",
        "3% with 4,000 psi is common practice",
    );
    for answered in [
        garage.clone().book("air: 6%", "air: 3%"),
        trowel.clone().job("finish: trowel", "finish: broom"),
    ] {
        answered.silent("air-under-trowel");
        answered.silent("little-air");
    }
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
fn a_sealer_wants_no_compound() {
    let sealed = files().job(SIZE, "size: 24 ft x 16 ft, seal: clear");
    sealed.says("compound-in-the-way", "does not hold", "maker");
    let wet = sealed.job("seal: clear", "seal: clear, curing: wet");
    wet.silent("compound-in-the-way");
    files().silent("compound-in-the-way");
}

/// By whatever way it comes: a finish, a border, an extra, a choice, a rule of the owner's.
#[test]
fn a_sealer_is_found_wherever_it_comes_from() {
    let code = "compound-in-the-way";
    let of_finish = files().book("hard: {", "hard: {seal: clear, ");
    let finished = of_finish
        .clone()
        .job(SIZE, "size: 24 ft x 16 ft, finish: hard");
    finished.says(code, "`patio` is cured with a compound and then sealed", "");
    let bordered = of_finish.job(SIZE, "size: 24 ft x 16 ft, border: 12 in of hard");
    bordered.says(code, "`patio` is cured with a compound and then sealed", "");
    let extra = files().job("remove:\n", "extra: [sealer: 2 gal]\nremove:\n");
    extra.says(
        code,
        "`sealer` goes over the curing compound on `patio`",
        "maker",
    );
    extra
        .job(SIZE, "size: 24 ft x 16 ft, curing: wet")
        .silent(code);
    let option = |more: &str| {
        let options = format!("options:\n  - Sealed: {{add: [sealer: 2 gal]{more}}}\nremove:\n");
        files().job("remove:\n", &options)
    };
    option("").says(
        code,
        "`sealer` goes over the curing compound on `patio`",
        "",
    );
    option(", change: {patio: {curing: wet}}").silent(code);
    let rule = files().book(
        "\nuse:",
        "\nalso:\n  seal it: {for: area, buy: sealer, much: 1 gal per 250 sq ft}\nuse:",
    );
    rule.says(code, "`sealer` goes over", "");
    // What cures too stands in no way.
    files()
        .book("items:\n", "items:\n  cure and seal sealer: {unit: gal, class: material, prices: {2026-03-01: 38.00}}\n")
        .job("remove:\n", "extra: [cure and seal sealer: 2 gal]\nremove:\n")
        .silent(code);
}

#[test]
fn a_color_is_spotted_by_compound_and_cover() {
    let colored = files().job(SIZE, "size: 24 ft x 16 ft, color: sandstone");
    colored.says("spotted-color", "cured with a compound", "`curing: none`");
    let cured = |way: &str| {
        colored
            .clone()
            .job(
                "color: sandstone",
                &format!("color: sandstone, curing: {way}"),
            )
            .book(
                "curing compound: curing compound",
                "curing compound: none\n  curing cover: none",
            )
    };
    cured("cover").says(
        "spotted-color",
        "cured under a cover",
        "common practice, no source",
    );
    cured("none").silent("spotted-color");
    files().silent("spotted-color");
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
